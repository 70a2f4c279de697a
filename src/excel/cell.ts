import type { Cells } from "../../shared/columns";
import { type Cell, type ErrorCode, type Fault, isFault, type Outcome } from "../../shared/outcome";

/** The errors a function may give, by the names Excel's library has for them. #NAME? and #REF! it takes in only. */
const names: Readonly<Partial<Record<string, keyof typeof CustomFunctions.ErrorCode>>> = {
  "#VALUE!": "invalidValue",
  "#N/A": "notAvailable",
  "#DIV/0!": "divisionByZero",
  "#NUM!": "invalidNumber",
  "#NULL!": "nullReference",
};

/** An error in a cell arrives as the library's error object, with its code and without words. */
function fromObject({ code }: { readonly code?: unknown }): Fault {
  if (typeof code !== "string") return { error: "#VALUE!", message: "a cell given holds neither a number nor text" };
  return code in names ? { error: code as ErrorCode, message: "" } : { error: "#VALUE!", message: `a cell given shows ${code}` };
}

const isObject = (handed: unknown): handed is object => typeof handed === "object" && handed !== null;

/** One cell as Excel hands it in; a blank one is null, "" or 0, depending on the platform. */
const cellOf = (handed: unknown): Cell => (isObject(handed) ? fromObject(handed) : (handed as Cell));

/** One argument as Excel hands it in: a block of cells, or null where it was left out. */
export function blockOf(handed: unknown): Cells | undefined {
  if (handed === null || handed === undefined) return undefined;
  if (!Array.isArray(handed)) return [[cellOf(handed)]];
  const block = handed as unknown[][];
  return block.some((line) => line.some(isObject)) ? block.map((line) => line.map(cellOf)) : (block as Cells);
}

/** The library's error class exists only once the host is ready: it is read here, inside a call. */
function errorOf({ error, message }: Fault): CustomFunctions.Error {
  const code = CustomFunctions.ErrorCode[names[error] ?? "invalidValue"];
  return message ? new CustomFunctions.Error(code, message) : new CustomFunctions.Error(code);
}

export type Shown = number | string | boolean | CustomFunctions.Error;

/** The cells of an answer. An answer that is one error is thrown, which every version of Excel shows with its message. */
export function answerOf(answer: readonly (readonly Outcome[])[]): readonly (readonly Shown[])[] {
  const only = answer.length === 1 && answer[0].length === 1 ? answer[0][0] : undefined;
  if (isFault(only)) throw errorOf(only);
  return answer.map((line) => line.map((outcome) => (isFault(outcome) ? errorOf(outcome) : outcome)));
}
