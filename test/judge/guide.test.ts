import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** The guide's steps, followed with a function that nobody has: in a copy of the project, to green. */

const root = join(__dirname, "../..");
const copy = mkdtempSync(join(tmpdir(), "guide-"));
afterAll(() => rmSync(copy, { recursive: true }));

const [shown, made] = ["bakeloss", "madeup"];
const renamed = (text: string): string =>
  text
    .replaceAll(shown, made)
    .replaceAll(shown.toUpperCase(), made.toUpperCase())
    .replace("How much resin was lost in the oven?", "How much of it is made up?");

/** Lines that the guide adds, by the file that it adds them to. */
function changes(): Map<string, string[]> {
  const guide = readFileSync(join(copy, "DEVELOPERS.md"), "utf8");
  const section = guide.slice(guide.indexOf("## Add a function"), guide.indexOf("## Tests"));
  const blocks = [...section.matchAll(/```diff\n\+\+\+ (\S+)\n(.*?)```/gs)];
  return new Map(
    blocks.map(([, path, lines]) => [
      path,
      lines
        .trimEnd()
        .split("\n")
        .map((line) => line.slice(1)),
    ]),
  );
}

const run = (...command: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: copy, encoding: "utf8", env: { ...process.env, CI: "" } });
  return { status, said: status === 0 ? "" : `${stdout}\n${stderr}` };
};
const green = { status: 0, said: "" };

it("leads to a function that every rule of the project takes", () => {
  const left = /^(node_modules|dist|release|hosted|\.cache|\.git)$/;
  for (const name of require("node:fs").readdirSync(root))
    if (!left.test(name)) cpSync(join(root, name), join(copy, name), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
  // What the compiler found of the sources before holds for their copies too.
  const types = ".cache/types";
  if (existsSync(join(root, types))) cpSync(join(root, types), join(copy, types));
  const steps = changes();
  expect([...steps.keys()]).toEqual([
    "src/resin/bakeloss.ts",
    "src/resin/index.ts",
    "src/help/asked.ts",
    "test/src/resin/bakeloss.test.ts",
  ]);
  for (const [path, lines] of steps) {
    const own = path.replace(shown, made);
    if (own !== path) writeFileSync(join(copy, own), `${renamed(lines.join("\n"))}\n`);
    else {
      // Each line goes in after the one like it.
      let text = readFileSync(join(copy, path), "utf8");
      for (const line of lines) text = text.replace(`${line}\n`, `${line}\n${renamed(line)}\n`);
      writeFileSync(join(copy, path), text);
    }
  }
  expect(run("node_modules/.bin/biome", "check", "--write", "src/resin", "src/help", "test/src/resin")).toEqual(green);
  expect(run("--import", "tsx", "tool/readme.ts")).toEqual(green);
  expect(readFileSync(join(copy, "README.md"), "utf8")).toContain("PORE.MADEUP(before, drained, cured");
  expect(run("node_modules/typescript/bin/tsc", "--noEmit", "--preserveSymlinks")).toEqual(green);
  expect(run("node_modules/.bin/biome", "check", "--error-on-warnings", ".")).toEqual(green);
  const tests = ["catalogue", "readme", "layering", "twins", "search", "madeup", "selfcheck"].map((name) => `${name}.test.ts`);
  expect(
    run("node_modules/.bin/jest", "--ci", "--selectProjects", "unit", "--maxWorkers", "1", ...["--testPathPatterns", ...tests]),
  ).toEqual(green);
});
