import { isFault, type Outcome, tidy } from "../shared/outcome";
import type { Working } from "../shared/working";
import { cellName, explain } from "../src/catalogue";
import { cautionsOf } from "../src/cautions";
import { type Answer, isRows, outermost } from "./engine";
import type { Made } from "./functions";

/** Text in columns, each as wide as its widest cell. */
function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) =>
    row
      .map((text, column) => text.padEnd(widths[column]))
      .join("   ")
      .trimEnd(),
  );
}

const sayOutcome = (outcome: Outcome): string => {
  if (isFault(outcome)) return `${outcome.error} ${outcome.message}`;
  if (typeof outcome === "boolean") return outcome ? "TRUE" : "FALSE";
  return typeof outcome === "number" ? tidy(outcome) : outcome;
};

const isWorking = (told: ReturnType<typeof explain>): told is Working => told !== undefined && !isFault(told);

/** How one call came to its number. */
function working({ contract, cells }: Made): string[] {
  const told = explain(contract, cells);
  if (!isWorking(told)) return [];
  return [...told.beside.map((words) => `note    ${words}`), `how     ${told.equation}`, `source  ${contract.source}`];
}

/** The rows of a per-piece call, each with its unit. */
const pieceRows = ({ contract, cells, answer }: Made): string[][] =>
  answer.flat().map((outcome, row) => {
    const told = explain(contract, cells, row);
    return [String(row + 1), isWorking(told) ? told.answer.map(([, value]) => value).join(", ") : sayOutcome(outcome)];
  });

function table(rows: Outcome[][], answer: Answer, call: Made | undefined): string[] {
  const told = call?.contract.returns.form === "row" && rows.length === 1 ? explain(call.contract, call.cells) : undefined;
  if (call && isWorking(told)) return [...told.answer.map(([label, text]) => `${label}: ${text}`), "", ...working(call)];
  if (call?.contract.per === "piece" && call.contract.returns.form === "cell" && (rows.length === 1 || rows[0].length === 1))
    return [call.contract.returns.of.label, ...aligned(pieceRows(call))];
  const texts = answer.texts();
  return aligned(rows.map((row, i) => row.map((outcome, j) => (isFault(outcome) ? sayOutcome(outcome) : texts[i][j]))));
}

function single(value: Outcome, call: Made | undefined): string[] {
  const told = call && !isFault(value) ? explain(call.contract, call.cells) : undefined;
  if (!call || !isWorking(told)) return [sayOutcome(value)];
  return [...told.answer.map(([label, text]) => `${label}: ${text}`), "", ...working(call)];
}

/** The answer to one formula as a person reads it: the value with its unit and label, how it came about, and the cautions. */
export function inWords(formula: string, answer: Answer): string {
  const name = outermost(formula);
  const last = answer.calls.at(-1);
  const call = last && cellName(last.contract) === name ? last : undefined;
  const cautions = cautionsOf([...new Set(answer.calls.flatMap(({ contract }) => contract.cautions))]);
  const lines = isRows(answer.value) ? table(answer.value, answer, call) : single(answer.value, call);
  return [...lines, ...(cautions.length ? ["", ...cautions.map((caution) => `! ${caution}`)] : [])].join("\n");
}
