import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getPackageJsonScript } from "office-addin-cli";
import { add, byProject, type Count, closing, countJest, type JestReport, none } from "./count";

/** `npm test`: types, lint and the build side by side, then the wanted projects of jest in one run on all cores; what failed is shown where it failed. */

const root = join(__dirname, "..");
const checks = ["types", "lint", "build"];
const { projects } = require("../jest.config.js") as { projects: readonly { displayName: string; roots: readonly string[] }[] };
const names = projects.map(({ displayName }) => displayName);

/** Runs a command as a script of package.json runs: with the packages' own commands at hand. */
function run(command: string, output: "inherit" | "pipe"): Promise<{ ended: boolean; said: string }> {
  const PATH = [join(root, "node_modules/.bin"), process.env.PATH].join(process.platform === "win32" ? ";" : ":");
  const child = spawn(command, { cwd: root, shell: true, stdio: ["ignore", output, output], env: { ...process.env, PATH } });
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream?.on("data", (data) => {
      said += data;
    });
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code) => resolve({ ended: code === 0, said }));
  });
}

async function check(step: string): Promise<Count> {
  const command = await getPackageJsonScript(step);
  if (!command) throw new Error(`package.json has no script called ${step}: start this with npm test`);
  const { ended, said } = await run(command, "pipe");
  console.log(`== ${step}\n${said}`);
  return ended ? { ...none, passed: 1 } : { ...none, failed: 1 };
}

async function tests(wanted: readonly string[]): Promise<Count> {
  const folder = mkdtempSync(join(tmpdir(), "porewise-"));
  try {
    const file = join(folder, "report.json");
    const { ended } = await run(`jest --ci --selectProjects ${wanted.join(" ")} --json --outputFile "${file}"`, "inherit");
    const report = existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as JestReport) : undefined;
    for (const { name, count, seconds } of report ? byProject(report, projects, root) : [])
      console.log(`== ${name}: ${closing(count)}, ${Math.round(seconds)} s of work`);
    return countJest(report, ended);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function test(asked: readonly string[]): Promise<Count> {
  const unknown = asked.find((step) => !checks.includes(step) && !names.includes(step));
  if (unknown) throw new Error(`“${unknown}” is no step: ${[...checks, ...names].join(", ")}`);
  const isWanted = (step: string) => !asked.length || asked.includes(step);
  const counts = await Promise.all(checks.filter(isWanted).map(check));
  const wanted = names.filter(isWanted);
  if (wanted.length) counts.push(await tests(wanted));
  return counts.reduce(add, none);
}

/** On a build machine nothing may be left out. */
const isLacking = ({ failed, passed, skipped }: Count): boolean => failed > 0 || passed === 0 || (Boolean(process.env.CI) && skipped > 0);

test(process.argv.slice(2)).then(
  (total) => {
    if (total.skipped) console.log(`\n${total.skipped} left out: a program that they need is missing, as is said above.`);
    console.log(`\n${closing(total)}`);
    process.exitCode = isLacking(total) ? 1 : 0;
  },
  (error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    console.log(`\n${closing({ ...none, failed: 1 })}`);
    process.exitCode = 1;
  },
);
