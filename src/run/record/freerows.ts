import type { Block } from "../../../shared/host";
import { atOf, rangeOf } from "../../../shared/xlsx/address";
import type { Cell } from "./writing";

const isBlank = (cell: Cell | undefined): boolean => cell === undefined || cell === null || cell === "";

/** One row of a block, counted from 0, with the cells to write into it; the rest of the row stays. */
export function rowAt({ at, cells }: Block, row: number, written: readonly Cell[]): Block {
  const [, sheet, corner] = /^(.*)!(\$?[A-Z]+\$?\d+)/.exec(at) ?? [];
  if (!sheet) throw new Error(`${at} is no address`);
  const { row: first, column: left } = atOf(corner);
  const width = cells[0]?.length ?? 1;
  const range = rangeOf({ top: first + row, left, bottom: first + row, right: left + width - 1 });
  return { at: `${sheet}!${range}`, cells: [(cells[0] ?? []).map((_, i) => written[i] ?? null)] };
}

export const freeRows = ({ cells }: Block, from = 0): number[] => cells.flatMap((row, i) => (i >= from && row.every(isBlank) ? [i] : []));

/** Free rows, those after the last filled one first: a ledger is read from top to bottom. */
export function nextRows(block: Block, from = 0): number[] {
  const last = block.cells.findLastIndex((row, i) => i >= from && !row.every(isBlank));
  return freeRows(block, from).filter((row) => row > last);
}
