import type { Cell, Fault, Outcome } from "../shared/outcome";

export type Cells = readonly (readonly Cell[])[];

export const divided: Fault = { error: "#DIV/0!", message: "" };

/** What a cell may hold that nobody meant to be calculated with. */
export const hostile: Readonly<Record<string, Cell>> = {
  text: "about so much",
  blank: "",
  "a space": " ",
  nothing: null,
  negative: -1,
  zero: 0,
  "minus zero": -0,
  huge: 1e300,
  tiny: 1e-300,
  "huge text": "1e999",
  "not a number": Number.NaN,
  infinity: Number.POSITIVE_INFINITY,
  "a truth": true,
  "a date before 1 March 1900": 60,
  "an old date as text": "1899-12-31",
  "an unknown unit": "5 furlong",
  "a decimal comma": "1,5 in",
  "a division by nothing": "1/0 in",
  "a formula": "=1+1",
  "an object's own word": "__proto__",
  "a page of letters": "x".repeat(40_000),
  "a page of digits": `${"1".repeat(40_000)}\n`,
  "a page of blanks": `1${" ".repeat(40_000)}x`,
  "marks that steer": "\u202e3/4\u2066 in\u0007\u200e",
  "an error": divided,
};

const codes = ["#VALUE!", "#N/A"];

/** An answer that a cell can show: no NaN, no Infinity, and an error says what is wrong. */
export function troubleWith(answer: Outcome, handed: boolean): string | undefined {
  if (typeof answer === "number") return Number.isFinite(answer) ? undefined : `the number ${answer}`;
  // What was typed may be quoted back, in words as in a message.
  if (typeof answer === "string" || typeof answer === "boolean")
    return /NaN|Infinity|undefined|\[object/.test(String(answer).replace(/“.*?”/gs, "")) ? `the words “${answer}”` : undefined;
  if (handed && answer.error === divided.error) return undefined;
  if (!codes.includes(answer.error)) return `the error ${answer.error}`;
  if (/[\p{Cc}\p{Cf}]|x{61}|1{61}/u.test(answer.message) || answer.message.length > 700)
    return `a message of ${answer.message.length} characters`;
  const own = answer.message.replace(/“.*?”/gs, "");
  if (answer.message.length < 10 || /NaN|Infinity|undefined|null|\[object/.test(own)) return `the message “${answer.message}”`;
  return undefined;
}

export const isHanded = (all: readonly unknown[]): boolean => all.flat(3).includes(divided);
