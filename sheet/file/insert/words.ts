import { isCall, joined, type Piece, piecesOf } from "../../../shared/xlsx/pieces";
import { engineReference } from "../../../shared/xlsx/sheetname";

/** New words for what a formula speaks of; undefined leaves one as it is. */
export interface Words {
  /** What stands for a sheet, by its name. */
  readonly sheet: (name: string) => string | undefined;
  /** What stands for a named range. */
  readonly range: (name: string) => string | undefined;
}

/** The sheet that a reference starts with. Those of other workbooks, `[1]Costs!`, and of several sheets, `Jan:Dec!`, are none. */
function sheetAt(pieces: readonly Piece[], at: number): string | undefined {
  const { kind, text } = pieces[at];
  if (!text.endsWith("!") || pieces[at - 1]?.kind === "bracket") return undefined;
  if (kind === "sheet") return engineReference(text.slice(1, -2));
  const isLast = pieces[at - 1]?.text === ":" && pieces[at - 2]?.kind === "word";
  return kind === "word" && !isLast ? text.slice(0, -1) : undefined;
}

/** A word that may name a range: no function, no sheet, no part of a table or of a sheet. */
const isName = (pieces: readonly Piece[], at: number): boolean =>
  pieces[at].kind === "word" &&
  !isCall(pieces, at) &&
  !pieces[at].text.endsWith("!") &&
  !pieces[at - 1]?.text.endsWith("!") &&
  pieces[at + 1]?.kind !== "bracket";

/** A formula, or a reference alone, in other words; texts within it stay. */
export function reworded(formula: string, { sheet, range }: Words): string {
  const pieces = piecesOf(formula);
  const word = (at: number): string | undefined => {
    const name = sheetAt(pieces, at);
    if (name !== undefined) return sheet(name);
    return isName(pieces, at) ? range(pieces[at].text) : undefined;
  };
  return joined(pieces.map((piece, at) => ({ ...piece, text: word(at) ?? piece.text })));
}
