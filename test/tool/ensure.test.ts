import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A project as ensure.js meets it: what the lock file wants, what is installed, and an npm that only says how it was called. */
function project(wanted: object, installed: object | undefined) {
  const folder = mkdtempSync(join(tmpdir(), "ensure-"));
  mkdirSync(join(folder, "tool"));
  for (const file of ["ensure.js", "programs.js"]) cpSync(join(__dirname, "../../tool", file), join(folder, "tool", file));
  writeFileSync(join(folder, "package-lock.json"), JSON.stringify({ packages: { "": {}, ...wanted } }));
  mkdirSync(join(folder, "node_modules"));
  if (installed) writeFileSync(join(folder, "node_modules/.package-lock.json"), JSON.stringify({ packages: installed }));
  const npm = join(folder, "npm.js");
  writeFileSync(npm, 'console.log("npm " + process.argv.slice(2).join(" ")); process.exit(1);');
  const run = (args: readonly string[], env: NodeJS.ProcessEnv = {}) =>
    spawnSync(process.execPath, [join(folder, "tool/ensure.js"), ...args], {
      encoding: "utf8",
      env: { ...process.env, npm_execpath: npm, ...env },
    });
  return { run, remove: () => rmSync(folder, { recursive: true }) };
}

const a = { "node_modules/a": { version: "1.0.0" } };

it.each([
  { case: "all is there", wanted: a, installed: a, installs: false },
  { case: "nothing is there", wanted: a, installed: undefined, installs: true },
  { case: "a package is missing", wanted: { ...a, "node_modules/b": { version: "1.0.0" } }, installed: a, installs: true },
  { case: "a version is another", wanted: { "node_modules/a": { version: "1.0.1" } }, installed: a, installs: true },
  {
    case: "a package of another platform is missing",
    wanted: { ...a, "node_modules/b": { version: "1.0.0", optional: true } },
    installed: a,
    installs: false,
  },
])("where $case: installs $installs", ({ wanted, installed, installs }) => {
  const { run, remove } = project(wanted, installed);
  const { status, stdout, stderr } = run([]);
  remove();
  if (installs) {
    expect(stdout).toContain("npm ci");
    expect(stderr).toContain("The packages could not be installed");
  } else expect(stdout + stderr).toBe("");
  expect(status).toBe(installs ? 1 : 0);
});

it("keeps its words out of an answer when told to be quiet", () => {
  const { run, remove } = project(a, undefined);
  const { stdout } = run(["--quiet"]);
  remove();
  expect(stdout).toBe("");
});

it("finds the judges that are named", () => {
  const { run, remove } = project(a, a);
  const programs = ["BROWSER", "FIREFOX", "SPREADSHEET", "PDFTOTEXT", "NGINX", "CADDY"];
  const named = Object.fromEntries(programs.map((name) => [`PORE_${name}`, process.execPath]));
  const { status, stdout, stderr } = run(["--judges"], named);
  remove();
  expect([status, stdout, stderr]).toEqual([0, "", ""]);
});

it("lets no build machine go on without a judge", () => {
  const { run, remove } = project(a, a);
  const { status, stderr } = run(["--judges"], { CI: "true", PORE_BROWSER: "/nowhere", PATH: "", PORE_FIREFOX: process.execPath });
  remove();
  expect(status).toBe(1);
  expect(stderr).toContain("Chrome, Chromium or Edge");
});
