import type { Block } from "../../../shared/host";
import type { Run } from "../schema";
import { logRows } from "./logline";
import { priceRows } from "./pricelines";
import { resinRow } from "./resinrow";
import type { Book, Cell, Writing } from "./writing";

/** Everything that a run writes into the workbook, as of now. */
export function recordOf(run: Run, book: Book): Writing {
  const none = (sheet: string): Writing => ({
    blocks: [],
    entries: [],
    missing: [`This workbook has no ${sheet} of the template: insert it under Workbook.`],
  });
  const parts = [
    book.log ? logRows(run, book.log) : none("Run Log"),
    book.resin ? resinRow(run, book.resin) : none("Resin Book"),
    book.costs || book.pieces ? priceRows(run, book) : none("Price Tag"),
  ];
  return {
    blocks: parts.flatMap(({ blocks }) => blocks),
    entries: parts.flatMap(({ entries }) => entries),
    missing: parts.flatMap(({ missing }) => missing),
  };
}

/** Cells changed since they were written. */
export function changedSince(after: readonly Block[], now: readonly (Block | undefined)[]): string[] {
  const same = (a: Cell, b: Cell | undefined) =>
    a === b || (typeof a === "number" && typeof b === "number" && Math.abs(a - b) < 1e-9 * Math.max(1, Math.abs(a)));
  return after.flatMap(({ at, cells }, i) =>
    cells.some((row, r) => row.some((cell, c) => cell !== null && !same(cell, now[i]?.cells[r]?.[c] ?? ""))) ? [at.replace(/'/g, "")] : [],
  );
}
