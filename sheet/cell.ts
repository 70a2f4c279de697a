import type { Arg, EvaluatedCell, FunctionResultObject, Matrix } from "@odoo/o-spreadsheet";
import type { Cells } from "../shared/columns";
import { type Cell, type ErrorCode, type Fault, isFault, type Outcome } from "../shared/outcome";
import { catalogue, cellName } from "../src/catalogue";

/** The error codes of o-spreadsheet, some of them its own, as other spreadsheet programs call them. */
const codes: Readonly<Record<string, ErrorCode>> = {
  "#VALUE!": "#VALUE!",
  "#ERROR": "#VALUE!",
  "#BAD_EXPR": "#VALUE!",
  "#SPILL!": "#VALUE!",
  "#CYCLE": "#REF!",
  "#REF": "#REF!",
  "#N/A": "#N/A",
  "#NAME?": "#NAME?",
  "#DIV/0!": "#DIV/0!",
  "#NUM!": "#NUM!",
  "#NULL!": "#NULL!",
};

const sheetCode = (code: ErrorCode): string => (code === "#REF!" ? "#REF" : code);

/** Better words for the engine's own error messages. */
const words: Readonly<Record<string, string>> = {
  "#VALUE!": "this needs another kind of value",
  "#REF!": "the formula refers to a cell that is not there",
  "#N/A": "there is no value",
  "#NAME?": "there is no function or name like this",
  "#DIV/0!": "division by zero",
  "#NUM!": "the number is too large or too small for a spreadsheet",
  "#NULL!": "the ranges share no cell",
};

export const tooLarge: Fault = { error: "#NUM!", message: words["#NUM!"] };

const isSyntax = (code: string, message: string) => code === "#BAD_EXPR" && !message.startsWith("Invalid number of arguments");

/** An error of the engine as a fault; undefined where the text is no error code. */
export function faultOf(code: string, message = ""): Fault | undefined {
  const error = codes[code];
  if (!error) return undefined;
  if (isSyntax(code, message)) return { error, message: `the formula cannot be read: check its brackets, quotes and commas (${message})` };
  return { error, message: unprefixed(message) ?? (message || words[error]) };
}

/** A function of ours that was typed without its prefix. */
function unprefixed(message: string): string | undefined {
  const typed = /^Unknown function: "(\w+)"$/.exec(message)?.[1].toUpperCase();
  const contract = catalogue.find(({ name }) => name === typed);
  return contract && `type ${cellName(contract)}(…): the functions of this add-in begin so`;
}

/** One cell as the engine hands it in. */
export function cellOf({ value, message }: FunctionResultObject): Cell {
  return typeof value === "string" && value.startsWith("#") ? (faultOf(value, message) ?? value) : value;
}

/** What a cell of a sheet shows; undefined where it is blank. */
export const shownBy = (cell: EvaluatedCell): Outcome | undefined =>
  cell.type === "empty" ? undefined : ((cellOf(cell) ?? undefined) as Outcome | undefined);

const isMatrix = (arg: Arg): arg is Matrix<FunctionResultObject> => Array.isArray(arg);

/** One argument of a call. The engine's ranges lie column by column, ours row by row; one left out is null or undefined. */
export function cellsOf(arg: Arg): Cells | undefined {
  if (arg === undefined || arg === null) return undefined;
  if (!isMatrix(arg)) return [[cellOf(arg)]];
  return arg[0].map((_, row) => arg.map((column) => cellOf(column[row])));
}

/** One cell of an answer, with its number format. The engine shows NaN as 0 without a word, so none may pass. */
export function resultOf(outcome: Outcome, format: string | undefined): FunctionResultObject {
  if (isFault(outcome)) return { value: sheetCode(outcome.error), message: outcome.message };
  if (typeof outcome !== "number") return { value: outcome };
  return Number.isFinite(outcome) ? { value: outcome, format } : { value: "#N/A", message: tooLarge.message };
}

/** A whole answer, column by column; a single cell stands alone. */
export function resultsOf(
  answer: readonly (readonly Outcome[])[],
  formatOf: (column: number) => string | undefined,
): FunctionResultObject | Matrix<FunctionResultObject> {
  if (answer.length === 1 && answer[0].length === 1) return resultOf(answer[0][0], formatOf(0));
  return answer[0].map((_, column) => answer.map((row) => resultOf(row[column], formatOf(column))));
}
