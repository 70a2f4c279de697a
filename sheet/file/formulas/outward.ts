import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { withoutEnds } from "../../../shared/xlsx/openends";
import { isCall, joined, type Piece, piecesOf } from "../../../shared/xlsx/pieces";
import { asStored } from "../../../src/calls";

export type Writer = Pick<typeof OSpreadsheet, "parse" | "iterateAstNodes" | "convertAstNodes" | "astToFormula">;

const callOf = (pieces: readonly Piece[], at: number, name: string) => isCall(pieces, at) && pieces[at].text.toUpperCase() === name;

/** A quote within a text, which the engine was told as `"a"&CHAR(34)&"b"`. */
function withQuotes(pieces: readonly Piece[]): Piece[] {
  const at = pieces.findIndex(
    (piece, i) =>
      piece.kind === "text" &&
      pieces[i + 1]?.text === "&" &&
      callOf(pieces, i + 2, "CHAR") &&
      pieces[i + 4]?.text === "34" &&
      pieces[i + 5]?.text === ")" &&
      pieces[i + 6]?.text === "&" &&
      pieces[i + 7]?.kind === "text",
  );
  if (at < 0) return [...pieces];
  const text = `${pieces[at].text.slice(0, -1)}""${pieces[at + 7].text.slice(1)}`;
  return withQuotes([...pieces.slice(0, at), { kind: "text", text }, ...pieces.slice(at + 8)]);
}

/** Files write `A1#`, all that a formula in A1 fills, as a call. */
const withSpills = (pieces: readonly Piece[]): Piece[] =>
  pieces.flatMap((piece, i) => {
    if (piece.text === "#" && pieces[i - 1]?.kind === "cell") return [{ kind: "mark", text: ")" }];
    const cell = piece.kind === "cell" ? i : i + 1;
    const starts = pieces[cell]?.kind === "cell" && pieces[cell + 1]?.text === "#";
    const own = cell === i ? !/!$/.test(pieces[i - 1]?.text ?? "") : /!$/.test(piece.text);
    return starts && own ? [{ kind: "word", text: "_xlfn.ANCHORARRAY" }, { kind: "mark", text: "(" }, piece] : [piece];
  });

/** The engine's writer takes "3/4" in a text for a day of March: every text is put back as it was typed. */
function withTexts(pieces: readonly Piece[], typed: readonly Piece[]): Piece[] {
  const texts = typed.filter(({ kind }) => kind === "text");
  if (pieces.filter(({ kind }) => kind === "text").length !== texts.length) return [...pieces];
  return pieces.map((piece) => (piece.kind === "text" ? texts.shift()! : piece));
}

type Node = ReturnType<Writer["parse"]>;

/** Whether a power would stand right behind a sign in front of this. */
const leadsWithPower = (node: Node): boolean => node.type === "BIN_OPERATION" && (node.value === "^" || leadsWithPower(node.left));
const isAmbiguous = (node: Node): boolean => node.type === "UNARY_OPERATION" && !node.postfix && leadsWithPower(node.operand);

/** To the engine -2^2 is -(2^2), elsewhere (-2)^2: brackets say which. Undefined where there is nothing to say. */
function withSigns(formula: string, { parse, iterateAstNodes, convertAstNodes, astToFormula }: Writer): string | undefined {
  const tree = parse(formula);
  if (!iterateAstNodes(tree).some(isAmbiguous)) return undefined;
  // A call without a name is written as a pair of brackets.
  const bracketed = (node: Node) => ({ ...node, type: "FUNCALL", value: "", args: [node] }) as unknown as Node;
  return astToFormula(
    convertAstNodes(tree, "UNARY_OPERATION", (node) => (isAmbiguous(node) ? { ...node, operand: bracketed(node.operand) } : node)),
  );
}

const newer = /_xlfn\.([A-Z0-9.]+)(?=\()/g;

/** Functions that the engine's writer has marked as new keep the mark. */
function withMarks(formula: string, written: string): string {
  const names = new Set([...written.matchAll(newer)].map(([, name]) => name));
  const pieces = piecesOf(formula);
  const marked = (text: string) => (names.has(text.toUpperCase()) ? `_xlfn.${text.toUpperCase()}` : text);
  return joined(pieces.map((piece, at) => (isCall(pieces, at) ? { ...piece, text: marked(piece.text) } : piece)));
}

/** What opening a file writes in for the engine: brackets around a sign in front of a power, and around a quote in a text. */
const forEngine = /\([-+]+[\w.$]+\)\^|CHAR\(34\)/i;

/** Whether the engine's writer changed no more than brackets and blanks: then a formula stays as it was typed. */
const isSame = (typed: string, written: string, { parse, astToFormula }: Writer): boolean =>
  !forEngine.test(typed) && astToFormula(parse(typed)).toUpperCase() === written.replace(newer, "$1").toUpperCase();

/** Numbers and names of functions in capitals, but for the mark of a newer function. */
const capital = (text: string): string => text.toUpperCase().replace(/^_XLFN\.(?:_XLWS\.)?/, (mark) => mark.toLowerCase());

/** A formula as files keep it: `typed` is what the engine holds, `written` what its own writer makes of it. */
export function fileFormula(typed: string, written: string, writer: Writer): string {
  const own = withSigns(typed, writer) ?? (isSame(typed, written, writer) ? typed.slice(1) : undefined);
  const text = own === undefined ? written : withMarks(own, written);
  const pieces = withSpills(withQuotes(withTexts(piecesOf(text), piecesOf(typed))));
  const spelt = pieces.map((piece, at) =>
    piece.kind === "number" || isCall(pieces, at) ? { ...piece, text: capital(piece.text) } : piece,
  );
  return asStored(withoutEnds(joined(spelt)).replace(/#REF(?!!)/g, "#REF!"));
}

/** A formula that the engine does not know goes back as it came. */
export const untouchedFormula = (typed: string): string => asStored(withoutEnds(typed.replace(/^=/, "")));
