const { spawn, spawnSync } = require("node:child_process");
const { existsSync, readFileSync } = require("node:fs");
const { join } = require("node:path");
const { findProgram } = require("./programs.js");

// Installs what a bare clone lacks, and is quick when nothing is missing: it runs before most scripts.

const root = join(__dirname, "..");
const quiet = process.argv.includes("--quiet");
const say = (words) => {
  if (!quiet) console.log(words);
};

function stop(words) {
  console.error(words);
  process.exit(1);
}

const packagesOf = (lock) => JSON.parse(readFileSync(join(root, lock), "utf8")).packages;

/** Contents are compared, not times: a clone has none that mean anything. Packages for other platforms are marked optional. */
function packagesAreInstalled() {
  const installed = "node_modules/.package-lock.json";
  if (!existsSync(join(root, installed))) return false;
  const have = packagesOf(installed);
  return Object.entries(packagesOf("package-lock.json")).every(
    ([path, { version, optional }]) => path === "" || have[path]?.version === version || (optional && !have[path]),
  );
}

/** npm, by the path under which it started us where it did. */
function npm(args) {
  const own = process.env.npm_execpath;
  const options = { cwd: root, stdio: ["ignore", quiet ? "ignore" : "inherit", "inherit"], shell: !own && process.platform === "win32" };
  return own?.endsWith("js") ? spawnSync(process.execPath, [own, ...args], options) : spawnSync("npm", args, options);
}

/** Two packages carry a program of this platform; npm may have been told not to run the scripts that place it. */
function programsRun() {
  const probe = 'require("esbuild").transformSync("1"); require("@swc/core").transformSync("1")';
  return spawnSync(process.execPath, ["-e", probe], { cwd: root, stdio: "ignore" }).status === 0;
}

function ensurePackages() {
  if (packagesAreInstalled()) return;
  say("Installing packages: a minute or so, once.");
  if (npm(["ci", "--include=dev", "--include=optional", "--loglevel=error"]).status !== 0)
    stop("The packages could not be installed: npm says above why. Mend that, then try again.");
  if (programsRun()) return;
  npm(["rebuild", "esbuild", "@swc/core"]);
  if (!programsRun()) stop("esbuild and swc do not run on this machine: npm rebuild esbuild @swc/core says why.");
}

const judges = {
  browser: { name: "Chrome, Chromium or Edge", does: "the tests in a browser", debian: "chromium" },
  firefox: { name: "Firefox", does: "the page in a second browser", debian: "firefox-esr" },
  spreadsheet: { name: "LibreOffice", does: "the comparison with another spreadsheet program", debian: "libreoffice-calc" },
  paper: { name: "pdftotext", does: "the reading of printed pages", debian: "poppler-utils" },
  nginx: { name: "nginx", does: "serving as the guide for hosts says", debian: "nginx" },
  caddy: { name: "Caddy", does: "serving as the guide for hosts says", debian: "caddy" },
};

const advice = {
  darwin: {
    browser: "brew install --cask google-chrome",
    firefox: "brew install --cask firefox",
    spreadsheet: "brew install --cask libreoffice",
    paper: "brew install poppler",
  },
  win32: {
    browser: "winget install Google.Chrome",
    firefox: "winget install Mozilla.Firefox",
    spreadsheet: "winget install TheDocumentFoundation.LibreOffice",
    paper: "scoop install poppler",
    nginx: "scoop install nginx",
    caddy: "scoop install caddy",
  },
};

function isDebian() {
  try {
    return /^ID=debian$/m.test(readFileSync("/etc/os-release", "utf8"));
  } catch {
    return false;
  }
}

function commandFor(judge) {
  if (advice[process.platform]) return advice[process.platform][judge];
  return existsSync("/usr/bin/apt-get")
    ? `sudo apt-get install ${judges[judge].debian}`
    : `install ${judges[judge].name} with your package manager`;
}

const missing = () => Object.keys(judges).filter((judge) => !findProgram(judge));

/** Installs programs beside what else is installed meanwhile; answers when that has ended, however it did. */
function installByApt(names) {
  say(`Installing ${names.join(" and ")}: a few minutes, once.`);
  const apt = spawn("sh", ["-c", 'apt-get -qq update && apt-get -qq install -y --no-install-recommends "$@"', "apt", ...names], {
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  });
  return new Promise((ended) => {
    apt.on("error", ended);
    apt.on("close", ended);
  });
}

async function beginJudges() {
  const lacking = missing();
  if (lacking.length && isDebian() && process.getuid?.() === 0) await installByApt(lacking.map((judge) => judges[judge].debian));
}

function checkJudges() {
  // A build machine that cannot judge must not say that all is well.
  if (process.env.CI && missing().length)
    stop(
      `Missing on this build machine: ${missing()
        .map((judge) => judges[judge].name)
        .join(", ")}. To have them: ${missing().map(commandFor).join("; ")}`,
    );
  for (const judge of missing())
    console.warn(`${judges[judge].name} was not found, so ${judges[judge].does} will be skipped. To have it: ${commandFor(judge)}`);
}

if (Number(process.versions.node.split(".")[0]) < 20) stop(`Node 20 or newer is needed; this is ${process.versions.node}.`);
const wantsJudges = process.argv.includes("--judges");
const begun = wantsJudges ? beginJudges() : undefined;
ensurePackages();
if (wantsJudges) begun.then(checkJudges);
