import { existsSync, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { parseArgs } from "node:util";
import { atOf } from "../shared/xlsx/address";
import { limits, Unreadable } from "../shared/xlsx/unzip";
import { type Note, type Recalculated, recalculated } from "./file/recalculated";

const usage =
  "npm run recalc -- in.xlsx -o out.xlsx [--force]    calculates a workbook's formulas and writes their values into a copy; --force writes over a file";

function fail(words: string): never {
  console.error(words);
  process.exit(2);
}

function options() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { output: { type: "string", short: "o" }, force: { type: "boolean" }, help: { type: "boolean", short: "h" } },
    });
  } catch (error) {
    return fail(`${(error as Error).message}\n\n${usage}`);
  }
}

/** A file may have several names. */
const isSame = (a: string, b: string): boolean => {
  if (!existsSync(b)) return false;
  const [one, other] = [statSync(realpathSync(a)), statSync(realpathSync(b))];
  return one.ino === other.ino && one.dev === other.dev;
};

function read(file: string): Uint8Array {
  let size = 0;
  try {
    size = statSync(file).size;
    if (size <= limits.unpacked) return readFileSync(file);
  } catch {
    return fail(`no file ${file} can be read`);
  }
  return fail(`${file} cannot be calculated: it is larger than 100 MB`);
}

/** Written under another name first: whoever opens the output never sees half of it. */
function write(file: string, bytes: Uint8Array): void {
  const beside = join(dirname(file), `.${basename(file)}.${process.pid}`);
  try {
    writeFileSync(beside, bytes, { flag: "wx" });
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    fail(`${file} cannot be written: ${(error as Error).message}`);
  }
}

/** Whether one cell stands right of another. */
function isNext(left: string, right: string): boolean {
  const [place, other] = [left, right].map((where) => where.slice(0, where.lastIndexOf("!")));
  const [a, b] = [left, right].map((where) => atOf(where.slice(where.lastIndexOf("!") + 1)));
  return place === other && a.row === b.row && a.column + 1 === b.column;
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** `Loads!B43` to `Loads!O43`, all with the same words, are one line. */
function merged(notes: readonly Note[]): Note[] {
  const lines: { first: string; last: string; words: string }[] = [];
  for (const { where, words } of notes) {
    const before = lines.at(-1);
    if (before && before.words === words && isNext(before.last, where)) before.last = where;
    else lines.push({ first: where, last: where, words });
  }
  return lines.map(({ first, last, words }) => ({
    where: first === last ? first : `${first}:${last.slice(last.lastIndexOf("!") + 1)}`,
    words,
  }));
}

const listed = (title: string, notes: readonly Note[]): string[] =>
  notes.length ? [`${title}:`, ...merged(notes).map(({ where, words }) => `  ${where}: ${words}`)] : [];

/** What happened, for a person to read. */
function report({ found, faulty, errors, otherErrors, left, cut }: Recalculated): string {
  return [
    `${count(found, "PORE formula", "PORE formulas")}, ${faulty ? `${faulty} with errors` : "no errors"}`,
    ...listed("Errors of PORE formulas", errors),
    ...listed("Other formulas that now give an error", otherErrors),
    ...listed("Larger than the cells they have", cut),
    ...listed(`Left as ${left.length === 1 ? "it was" : "they were"}`, left),
  ].join("\n");
}

const { values, positionals } = options();
if (values.help) console.log(usage);
else {
  const [input, ...more] = positionals;
  const output = values.output;
  if (!input || more.length || !output) fail(usage);
  const bytes = read(input);
  if (isSame(input, output)) fail("the output is the input: name another file, so that yours stays as it is");
  if (existsSync(output) && !values.force) fail(`${output} already exists: name another file, or add --force to replace it`);
  try {
    const result = recalculated(bytes);
    write(output, result.file);
    console.log(report(result));
  } catch (error) {
    const words = error instanceof Unreadable ? error.message : `something in it is not as spreadsheet programs write it (${error})`;
    fail(`${input} cannot be calculated: ${words}`);
  }
}
