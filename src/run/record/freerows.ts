import type { Block } from "../../../shared/host";
import { columnName } from "../../workbook/place";
import type { Cell } from "./writing";

const isBlank = (cell: Cell | undefined): boolean => cell === undefined || cell === null || cell === "";

/** "'Run Log'!A9:N38", from 0. */
function origin(at: string): { readonly sheet: string; readonly row: number; readonly column: number } {
  const found = /^(.*)!\$?([A-Z]+)\$?(\d+)/.exec(at);
  if (!found) throw new Error(`${at} is no address`);
  const [, sheet, letters, row] = found;
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { sheet, row: Number(row) - 1, column };
}

export function rowAt({ at, cells }: Block, row: number, written: readonly Cell[]): Block {
  const { sheet, row: top, column } = origin(at);
  const [first, last] = [columnName(column), columnName(column + (cells[0]?.length ?? 1) - 1)];
  const filled = (cells[0] ?? []).map((_, i) => written[i] ?? null);
  return { at: `${sheet}!${first}${top + row + 1}:${last}${top + row + 1}`, cells: [filled] };
}

export const freeRows = ({ cells }: Block, from = 0): number[] => cells.flatMap((row, i) => (i >= from && row.every(isBlank) ? [i] : []));

/** Free rows, those after the last filled one first: a ledger is read from top to bottom. */
export function nextRows(block: Block, from = 0): number[] {
  const last = block.cells.findLastIndex((row, i) => i >= from && !row.every(isBlank));
  return freeRows(block, from).filter((row) => row > last);
}
