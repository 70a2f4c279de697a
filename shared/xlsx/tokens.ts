/** A tokenizer for formulas: enough to rename and to move references, and no more. */

export type Kind = "text" | "sheet" | "bracket" | "error" | "range" | "cell" | "word" | "number" | "space" | "mark";

export interface Token {
  readonly kind: Kind;
  readonly text: string;
}

/** Kinds of tokens with their patterns. The first that matches counts; together they match any text. */
const kinds: readonly [Kind, string][] = [
  ["text", '"(?:[^"]|"")*"'],
  ["sheet", "'(?:[^']|'')*'!?"],
  ["bracket", "\\[(?:[^\\[\\]']|'.|\\[(?:[^\\[\\]']|'.)*\\])*\\]"],
  ["error", "#(?:REF!|VALUE!|DIV/0!|NAME\\?|NUM!|NULL!|N/A)"],
  ["range", "\\$?[A-Za-z]{1,3}:\\$?[A-Za-z]{1,3}(?![\\w.(!])|\\$?\\d+:\\$?\\d+(?![\\w.])"],
  ["cell", "\\$?[A-Za-z]{1,3}\\$?[1-9]\\d{0,6}(?![\\w.(!\\[])"],
  ["word", "[\\p{L}_\\\\][\\p{L}\\p{N}_.\\\\?]*!?"],
  ["number", "(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?"],
  ["space", "\\s+"],
  ["mark", "<>|<=|>=|[\\s\\S]"],
];

const pattern = new RegExp(kinds.map(([, source]) => `(${source})`).join("|"), "gu");

/** The tokens of a formula, joined the formula again. */
export const tokensOf = (formula: string): Token[] =>
  [...formula.matchAll(pattern)].map((found) => ({
    kind: kinds[found.slice(1).findIndex((group) => group !== undefined)][0],
    text: found[0],
  }));

export const joined = (tokens: readonly Token[]): string => tokens.map(({ text }) => text).join("");

/** Whether the word at a place calls a function. */
export function isCall(tokens: readonly Token[], at: number): boolean {
  return tokens[at]?.kind === "word" && tokens[at + 1]?.text === "(";
}

/** The place of the bracket that closes the one at a place. */
export function closing(tokens: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    if (tokens[at].kind !== "mark") continue;
    if (tokens[at].text === "(") depth++;
    if (tokens[at].text === ")" && --depth === 0) return at;
  }
  return tokens.length - 1;
}
