import { type Block, blockOf, rangeOf } from "../address";
import { type Move, movedBlock, movedFormula, sheetName } from "../move";

/** Whether a move shifts cells of a sheet. */
export const shifts = (own: string, move: Move): boolean =>
  (move.kind === "lines" || move.kind === "block") && sheetName(move.sheet) === sheetName(own);

const said = (block: Block): string => rangeOf(block).replace(/^(\w+):\1$/, "$1");

/** A range as attributes hold it, after a move on its sheet; "" where nothing is left. Whole rows and columns are ranges too. */
export function movedRange(range: string, move: Move): string {
  if (/^\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/i.test(range)) {
    const block = movedBlock(blockOf(range), move);
    return block ? said(block) : "";
  }
  if (move.kind !== "lines") return range;
  const { formula } = movedFormula(range, move.sheet, move);
  return formula.includes("#REF!") ? "" : formula;
}

/** Several ranges, a space between them. */
export const movedRanges = (ranges: string, move: Move): string =>
  ranges
    .split(/\s+/)
    .filter(Boolean)
    .map((range) => movedRange(range, move))
    .filter(Boolean)
    .join(" ");
