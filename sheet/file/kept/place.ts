import type * as OSpreadsheet from "@odoo/o-spreadsheet";

type Position = OSpreadsheet.CellPosition;

/** A cell of a workbook as a key. */
export const sheetCell = ({ sheetId, col, row }: Position): string => `${sheetId} ${col} ${row}`;
