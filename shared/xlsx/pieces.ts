/** A formula cut into pieces: enough to rename and to move it, and no more. */

export type Kind = "text" | "sheet" | "bracket" | "error" | "range" | "cell" | "word" | "number" | "space" | "mark";

export interface Piece {
  readonly kind: Kind;
  readonly text: string;
}

/** In this order: the first that fits counts. Joined they match anything. */
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

/** The pieces of a formula, joined the formula again. */
export const piecesOf = (formula: string): Piece[] =>
  [...formula.matchAll(pattern)].map((found) => ({
    kind: kinds[found.slice(1).findIndex((group) => group !== undefined)][0],
    text: found[0],
  }));

export const joined = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join("");

/** Whether the word at a place calls a function. */
export function isCall(pieces: readonly Piece[], at: number): boolean {
  return pieces[at]?.kind === "word" && pieces[at + 1]?.text === "(";
}

/** The place of the bracket that closes the one at a place. */
export function closing(pieces: readonly Piece[], open: number): number {
  let depth = 0;
  for (let at = open; at < pieces.length; at++) {
    if (pieces[at].kind !== "mark") continue;
    if (pieces[at].text === "(") depth++;
    if (pieces[at].text === ")" && --depth === 0) return at;
  }
  return pieces.length - 1;
}
