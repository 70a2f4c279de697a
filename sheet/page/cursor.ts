import type { Model } from "@odoo/o-spreadsheet";
import { atOf } from "../../shared/xlsx/address";
import { cursorKey } from "../file/beside/cursor";
import { followedOf } from "../file/beside/followed";
import { reachHidden } from "./hiddencells";

/** The first time that a sheet is turned to, its cursor waits where the file has it: at the first cell that a person fills. */
export function placeCursor(model: Model, book: object): () => void {
  reachHidden(model);
  const seen = new Set<string>();
  return () => {
    const sheetId = model.getters.getActiveSheetId();
    // Waits until the grid has a size: before that it would scroll to the selection.
    if (seen.has(sheetId) || !model.getters.getSheetViewDimension().height) return;
    seen.add(sheetId);
    const cell = followedOf(book, sheetId)[cursorKey];
    const { col, row } = model.getters.getActivePosition();
    if (!cell || col || row) return;
    const at = atOf(cell);
    const { numberOfRows, numberOfCols } = model.getters.getSheetSize(sheetId);
    if (at.row < numberOfRows && at.column < numberOfCols) {
      model.selection.selectCell(at.column, at.row);
      model.dispatch("SET_VIEWPORT_OFFSET", { offsetX: 0, offsetY: 0 });
    }
  };
}
