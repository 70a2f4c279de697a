import { asTyped } from "../src/calls";

/** A text literal, or a sheet name in apostrophes, which may hold quotes and is passed over. */
const quoted = /'(?:[^']|'')*'|"((?:[^"]|"")*)"/g;

const joined = (pieces: readonly string[], code: number) => `(${pieces.map((piece) => `"${piece}"`).join(`&CHAR(${code})&`)})`;

/**
 * Spells text literals so that the engine reads them: it knows no `""` for a quote inside a text, and takes a backslash before
 * the closing quote for an escape. Nor does it know the operator @ that Excel puts in front of a call: `=@PORE.FILL(…)`. `"1 1/2"""`, an inch and a half as other programs write it, becomes `("1 1/2"&CHAR(34)&"")`.
 */
export const respelled = (formula: string): string =>
  asTyped(formula).replace(quoted, (literal, text: string | undefined) => {
    if (text?.includes('""')) return joined(text.split('""'), 34);
    if (text?.endsWith("\\")) return joined([text.slice(0, -1), ""], 92);
    return literal;
  });
