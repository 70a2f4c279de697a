import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { opened } from "../../../sheet/file/open";
import { addresses } from "../addresses";
import { workbookOf } from "./workbooks";

/** A workbook of these parts as it opens, with eyes for its cells. */
export function open(made: Parameters<typeof workbookOf>[0]) {
  const workbook = opened(workbookOf(made), engine);
  const { getters } = model(workbook.book);
  const sheetId = (name: string) => getters.getSheetIds().find((id) => getters.getSheetName(id) === name)!;
  const shown = (address: string, sheet = getters.getSheetName(getters.getSheetIds()[0])) =>
    getters.getEvaluatedCell({ sheetId: sheetId(sheet), ...addresses(address) });
  const typed = (address: string, sheet = getters.getSheetName(getters.getSheetIds()[0])) =>
    getters.getCellText({ sheetId: sheetId(sheet), ...addresses(address) }, { showFormula: true });
  return { ...workbook, getters, shown, typed };
}
