import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../../sheet/engine";
import { opened } from "../../../../sheet/file/open";
import { saved } from "../../../../sheet/file/save";
import { textsOf } from "../workbooks";

/** The part of a file's first sheet. */
export const first = "xl/worksheets/sheet1.xml";

/** The parts of a file after the page did these commands to its first sheet, one after another. */
export async function partsOnce(
  file: Uint8Array,
  ...commands: readonly (readonly [type: string, payload: object])[]
): Promise<Record<string, string>> {
  const workbook = opened(file, engine);
  const book = model(workbook.book);
  const sheetId = book.getters.getSheetIds()[0];
  for (const [type, payload] of commands)
    expect([type, book.dispatch(type as never, { sheetId, sheetName: "Costs", ...payload } as never).isSuccessful]).toEqual([type, true]);
  return textsOf(await saved(book, workbook, engine));
}
