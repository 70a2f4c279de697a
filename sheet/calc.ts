import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { isFault } from "../shared/outcome";
import { inWords } from "./answertext";
import { type Answer, evaluator } from "./engine";

const usage = `npm run calc -- '=PORE.FILL(6,5,104)'    answers in words
npm run -s calc -- --file F              one formula a line; answers one JSON object a line`;

/** One line of the answer to a file. */
const record = (formula: string, { value }: Answer): string => JSON.stringify(isFault(value) ? { formula, ...value } : { formula, value });

function fail(words: string): never {
  console.error(words);
  process.exit(2);
}

function read(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return fail(`no file ${file} can be read`);
  }
}

function options() {
  try {
    return parseArgs({ allowPositionals: true, options: { file: { type: "string" }, help: { type: "boolean", short: "h" } } });
  } catch (error) {
    return fail(`${(error as Error).message}\n\n${usage}`);
  }
}

const { values, positionals: formulas } = options();
if (values.help) console.log(usage);
else if (values.file !== undefined) {
  if (formulas.length) fail(`give formulas or a file of them, not both\n\n${usage}`);
  const lines = read(values.file)
    .replace(/^\uFEFF/, "")
    .split(/\r?\n/);
  const answer = evaluator();
  const wanted = lines.map((line) => line.trim()).filter(Boolean);
  process.stdout.write(wanted.map((formula) => `${record(formula, answer(formula))}\n`).join(""));
} else if (formulas.length) {
  const answer = evaluator();
  console.log(formulas.map((formula) => inWords(formula, answer(formula))).join("\n\n"));
} else fail(usage);
