import type { Model } from "@odoo/o-spreadsheet";
import * as engine from "@odoo/o-spreadsheet";
import { bookOf } from "../../../../sheet/book";
import { model } from "../../../../sheet/engine";

/** A new workbook, as the page holds it. */
export const blank = () => ({ book: model().exportData(), documents: {}, print: {} });
export const { deepCopy: copied } = engine.helpers;

/** Opened, kept and opened again, as the page does: looks that are the usual ones are gone by then. */
export const settled = (book: object): Model => model(JSON.parse(JSON.stringify(bookOf(model(copied(book))).book)));

export const idOf = ({ getters }: Model, name: string): string => getters.getSheetIds().find((id) => getters.getSheetName(id) === name)!;

/** Everything that a sheet shows. */
export function shown(book: Model, name: string) {
  const { getters } = book;
  const sheetId = idOf(book, name);
  // A spill that once was longer leaves cells behind that hold nothing: whether it was depends on the order of evaluation.
  return getters.getEvaluatedCellsPositions(sheetId).flatMap(({ row, col }) => {
    const position = { sheetId, row, col };
    const { value, formattedValue, format } = getters.getEvaluatedCell(position);
    if (value === null) return [];
    return [[row, col, value, formattedValue, format, getters.getCellComputedStyle(position), getters.getCellComputedBorder(position)]];
  });
}

/** A chart in the corner of a sheet. */
export const chartOver = (dataRange: string, more: object = {}) => ({
  ...{ id: "1", tag: "chart", col: 0, row: 0, offset: { x: 0, y: 0 }, width: 9, height: 9 },
  data: { type: "line", dataSource: { type: "range", dataSets: [{ dataSetId: "0", dataRange }], dataSetsHaveTitle: false }, ...more },
});
