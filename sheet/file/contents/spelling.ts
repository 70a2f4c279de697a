import type { At } from "../../../shared/xlsx/address";
import { closing, isCall, joined, type Piece, piecesOf } from "../../../shared/xlsx/pieces";
import { engineReference } from "../../../shared/xlsx/sheetname";
import { plainReference, type Table } from "../../../shared/xlsx/tables";
import { asTyped } from "../../../src/calls";
import { respelled } from "../../quotes";

/** What formulas of one workbook may speak of. */
export interface Vocabulary {
  readonly tables: readonly Table[];
  /** Names that stand for a number, a text or a formula: the engine has names for ranges only. */
  readonly meanings: (name: string, sheet: string) => string | undefined;
}

/** Where a formula stands. */
export interface Standing extends At {
  readonly sheet: string;
}

/** Marks that newer functions carry in files; where the engine does not know the function either, the mark changes nothing. */
const newer = /^(?:_xlfn\.|_xlws\.)+/i;

const mark = (text: string): Piece => ({ kind: "mark", text });

/** `_xlfn.ANCHORARRAY(A1)` is how files write `A1#`, all that a formula in A1 fills. */
function withSpills(pieces: readonly Piece[]): Piece[] {
  const at = pieces.findIndex((piece, i) => isCall(pieces, i) && /^_xlfn\.ANCHORARRAY$/i.test(piece.text));
  if (at < 0) return [...pieces];
  const end = closing(pieces, at + 1);
  return withSpills([...pieces.slice(0, at), ...pieces.slice(at + 2, end), mark("#"), ...pieces.slice(end + 1)]);
}

function withWords(pieces: readonly Piece[], { tables, meanings }: Vocabulary, standing: Standing): string {
  let out = "";
  for (let at = 0; at < pieces.length; at++) {
    const { kind, text } = pieces[at];
    const next = pieces[at + 1];
    if (kind === "error" && text === "#REF!") out += "#REF";
    else if (isCall(pieces, at)) out += text.replace(newer, "");
    else if (kind === "word" && next?.kind === "bracket")
      out += plainReference(tables, text, pieces[++at].text, standing.sheet, standing) ?? text + next.text;
    else if (kind === "bracket" && next?.kind !== "word" && pieces[at - 1]?.kind !== "sheet")
      out += plainReference(tables, undefined, text, standing.sheet, standing) ?? text;
    else if (kind === "word") out += meanings(text, standing.sheet) ?? text;
    else out += text;
  }
  return out;
}

const isSign = ({ kind, text }: Piece) => kind === "mark" && /^[-+]$/.test(text);
const opens = (piece: Piece | undefined) => !piece || (piece.kind === "mark" && /^([(,;{=<>&^*/+-]|<>|<=|>=)$/.test(piece.text));

/** The end of the operand that starts at a place. */
function operandEnd(pieces: readonly Piece[], from: number): number {
  let at = from;
  while (pieces[at]?.kind === "sheet" || pieces[at]?.text.endsWith("!")) at++;
  if (isCall(pieces, at)) at = closing(pieces, at + 1);
  else if (pieces[at]?.text === "(") at = closing(pieces, at);
  while (/^[:%#]$/.test(pieces[at + 1]?.text ?? "")) at += pieces[at + 1].text === ":" ? 2 : 1;
  return at;
}

/** Elsewhere -2^2 is 4; the engine reads it as -4, unless told with brackets. */
function withSigns(formula: string): string {
  const pieces = piecesOf(formula).filter(({ kind }) => kind !== "space");
  for (let at = 0; at < pieces.length; at++) {
    if (!isSign(pieces[at]) || !opens(pieces[at - 1])) continue;
    let from = at;
    while (pieces[from] && isSign(pieces[from])) from++;
    const end = operandEnd(pieces, from);
    if (pieces[end + 1]?.text !== "^") continue;
    pieces.splice(end + 1, 0, mark(")"));
    pieces.splice(at, 0, mark("("));
    at++;
  }
  return joined(pieces);
}

const withSheet = (piece: Piece): Piece => (piece.kind === "sheet" ? { ...piece, text: engineReference(piece.text) } : piece);

/** A formula of a file, which has no sign in front, as the engine reads it. */
export function engineFormula(formula: string, vocabulary: Vocabulary, standing: Standing): string {
  const named = withWords(withSpills(piecesOf(formula.replace(/^=/, ""))), vocabulary, standing);
  const placed = named.includes("''") ? joined(piecesOf(named).map(withSheet)) : named;
  const signed = /[-+][^-+]*\^/.test(placed) ? withSigns(placed) : placed;
  return `=${respelled(asTyped(signed))}`;
}
