import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getPackageJsonScript } from "office-addin-cli";
import { add, type Count, closing, countJest, type JestReport, none } from "./count";

/** `npm test`: types, lint, the build, then every project of jest; what failed is shown where it failed. */

const root = join(__dirname, "..");
const checks = ["types", "lint", "build"];
const projects = ["unit", "hosts", "judge", "e2e"];

/** Runs a command as a script of package.json runs: with the packages' own commands at hand. */
function run(command: string): boolean {
  const PATH = [join(root, "node_modules/.bin"), process.env.PATH].join(process.platform === "win32" ? ";" : ":");
  return (
    spawnSync(command, { cwd: root, shell: true, stdio: ["ignore", "inherit", "inherit"], env: { ...process.env, PATH } }).status === 0
  );
}

async function check(step: string): Promise<Count> {
  const command = await getPackageJsonScript(step);
  if (!command) throw new Error(`package.json has no script called ${step}: start this with npm test`);
  return run(command) ? { ...none, passed: 1 } : { ...none, failed: 1 };
}

function project(name: string, folder: string): Count {
  const file = join(folder, `${name}.json`);
  const ended = run(`jest --ci --selectProjects ${name} --json --outputFile "${file}"`);
  return countJest(existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as JestReport) : undefined, ended);
}

async function test(wanted: readonly string[]): Promise<Count> {
  const steps = [...checks, ...projects];
  const unknown = wanted.find((step) => !steps.includes(step));
  if (unknown) throw new Error(`“${unknown}” is no step: ${steps.join(", ")}`);
  const folder = mkdtempSync(join(tmpdir(), "porewise-"));
  let total = none;
  try {
    for (const step of steps.filter((name) => !wanted.length || wanted.includes(name))) {
      console.log(`\n== ${step}`);
      const count = checks.includes(step) ? await check(step) : project(step, folder);
      if (count.failed) console.log(`== ${step}: ${closing(count)}`);
      total = add(total, count);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return total;
}

test(process.argv.slice(2)).then(
  (total) => {
    console.log(`\n${closing(total)}`);
    process.exitCode = total.failed || !total.passed ? 1 : 0;
  },
  (error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    console.log(`\n${closing({ ...none, failed: 1 })}`);
    process.exitCode = 1;
  },
);
