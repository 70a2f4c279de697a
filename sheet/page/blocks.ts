import type { Model, Range, Zone } from "@odoo/o-spreadsheet";
import type { Block, Ended } from "../../shared/host";
import { letters } from "../../shared/xlsx/letters";
import { respelled } from "../quotes";

type Getters = Model["getters"];
type Typed = string | number | boolean;

/** "'Run Log'!A12:N12" */
export function placeOf(getters: Getters, sheetId: string, { left, right, top, bottom }: Zone): string {
  return `'${getters.getSheetName(sheetId).replace(/'/g, "''")}'!${letters(left)}${top + 1}:${letters(right)}${bottom + 1}`;
}

/** Content as the engine keeps it: a number is written plainly whatever its format shows. */
function typedAt(getters: Getters, sheetId: string, col: number, row: number): Typed {
  const cell = getters.getCell({ sheetId, col, row });
  const text = !cell ? "" : cell.isFormula ? getters.getCellText({ sheetId, col, row }, { showFormula: true }) : cell.content;
  return text !== "" && !text.startsWith("=") && Number.isFinite(Number(text)) ? Number(text) : text;
}

export const typedIn = (getters: Getters, { left, right, top, bottom }: Zone, sheetId: string): Typed[][] =>
  Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (_, column) => typedAt(getters, sheetId, left + column, top + row)),
  );

const contentOf = (cell: Typed): string =>
  typeof cell === "string" ? (cell.startsWith("=") ? respelled(cell) : cell) : String(cell).toUpperCase();

/** Whether a reference led to no cells of the workbook. */
export const isNowhere = ({ invalidXc, invalidSheetName }: Range): boolean => Boolean(invalidXc || invalidSheetName);

/** Writes blocks of cells; where one cell is refused, all are as they were. */
export function putBlocks(
  model: Model,
  blocks: readonly Block[],
  rangeOf: (reference: string) => Range,
): Ended & { before?: readonly Block[] } {
  const { getters } = model;
  const ranges = blocks.map(({ at }) => rangeOf(at));
  const lost = ranges.findIndex(isNowhere);
  if (lost >= 0) return { done: false, words: `There is no ${blocks[lost].at} in this workbook.` };
  const before = blocks.map(({ at, cells }, i): Block => {
    const { zone, sheetId } = ranges[i];
    const typed = typedIn(getters, zone, sheetId);
    return { at, cells: cells.map((row, r) => row.map((cell, c) => (cell === null ? null : typed[r][c]))) };
  });
  const fill = (all: readonly Block[]): string | undefined => {
    for (const [i, { cells }] of all.entries())
      for (const [r, line] of cells.entries())
        for (const [c, cell] of line.entries()) {
          if (cell === null) continue;
          const { zone, sheetId } = ranges[i];
          const [col, row] = [zone.left + c, zone.top + r];
          const { isSuccessful } = model.dispatch("UPDATE_CELL", { sheetId, col, row, content: contentOf(cell) });
          if (!isSuccessful && typedAt(getters, sheetId, col, row) !== cell) return `${letters(col)}${row + 1}`;
        }
    return undefined;
  };
  const refused = fill(blocks);
  if (refused === undefined) return { done: true, before };
  fill(before);
  return { done: false, words: `The cell ${refused} cannot be written: it may be locked. Nothing was written.` };
}
