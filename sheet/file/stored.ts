import { namespace } from "../../src/catalogue";
import { isCall, joined, piecesOf } from "./pieces";

/** Files keep the functions of an add-in under a name of their own; one program writes it back in lower case. */
const prefix = `_xldudf_${namespace}_`;
const stored = new RegExp(`^${prefix}([A-Z]+)$`, "i");
const typed = new RegExp(`^${namespace}\\.([A-Z]+)$`, "i");

const renamed = (formula: string, from: RegExp, to: (name: string) => string): string => {
  const pieces = piecesOf(formula);
  return joined(
    pieces.map((piece, at) => {
      const name = isCall(pieces, at) ? from.exec(piece.text)?.[1] : undefined;
      return name ? { ...piece, text: to(name.toUpperCase()) } : piece;
    }),
  );
};

/** `_xldudf_pore_fill(A1)` becomes `PORE.FILL(A1)`. */
export const asTyped = (formula: string): string => renamed(formula, stored, (name) => `${namespace}.${name}`);

/** `PORE.FILL(A1)` becomes `_xldudf_PORE_FILL(A1)`. */
export const asStored = (formula: string): string => renamed(formula, typed, (name) => `${prefix}${name}`);

/** Whether a formula, as typed, calls one of our functions. */
export function callsOurs(formula: string): boolean {
  const pieces = piecesOf(formula);
  return pieces.some((piece, at) => isCall(pieces, at) && typed.test(piece.text));
}
