import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import { rowsOf } from "../../shared/xlsx/cells";
import { withEdits } from "../../shared/xlsx/edits";
import { flawOf, NotWhole } from "../../shared/xlsx/integrity";
import { dynamicMark } from "../../shared/xlsx/metadata";
import { edit } from "../../shared/xlsx/package";
import { zipped } from "../../shared/xlsx/zip";
import { enginesFile, enginesSheet } from "../enginesfile";
import type { Beside } from "./beside/beside";
import { followedOf } from "./beside/followed";
import { solidColors } from "./beside/looks";
import { writeBeside } from "./beside/pieces";
import { withoutUndeclared } from "./beside/prefixes";
import { withFormats } from "./beside/resultformats";
import { withStoredRules } from "./formulas/inrules";
import { aroundIn, type Reader } from "./formulas/known";
import type { Writer } from "./formulas/outward";
import { cellEdits, positionAt } from "./kept/cells";

export type Engine = Pick<typeof OSpreadsheet, "Model"> & Reader & Writer;

/** One sheet: formulas as other programs read them, the values of every cell that a formula fills. */
function finishedSheet(xml: string, id: string, model: Model, engine: Engine, mark: () => number): string {
  const rows = rowsOf(xml, []);
  const cells = rows.flatMap((row) => row.cells).filter(({ address }) => model.getters.getCell(positionAt(id, address))?.isFormula);
  const texts = new Map(cells.map(({ address, formula }) => [address, formula?.text]));
  const written = (_: string, address: string, typed: string) => texts.get(address) ?? typed.slice(1);
  const of = { model, engine, around: aroundIn(model), written, unsure: new Set<string>(), mark };
  return withStoredRules(withEdits(xml, cellEdits({ id, rows }, [...texts.keys()], [], of), rows));
}

const book = "xl/workbook.xml";

/** Text that the engine holds with an apostrophe in front needs none in a file. */
const withoutApostrophes = (xml: string): string => xml.replace(/(<t(?:\s[^>]*)?>\s*)'/g, "$1");

/**
 * A workbook written anew: the engine's own file, and beside it what was read of the file that it came from. For workbooks without
 * a file, and for what was made on the page and cannot be written into one.
 */
export async function carried(model: Model, beside: Beside, engine: Engine): Promise<Uint8Array> {
  const data = withFormats(model);
  const parts = await enginesFile(data, engine);
  const sheets = data.sheets.map((sheet, i) => ({ sheet, path: enginesSheet(i), here: followedOf(data, sheet.id) }));
  for (const { sheet, path } of sheets)
    edit(parts, path, (xml) => finishedSheet(xml, sheet.id, model, engine, () => dynamicMark(parts, book)));
  edit(parts, "xl/sharedStrings.xml", withoutApostrophes);
  const tidied = ["xl/styles.xml", ...sheets.map(({ path }) => path)];
  for (const path of tidied) edit(parts, path, solidColors);
  writeBeside({ parts, path: book, model, data, sheets }, beside);
  for (const path of tidied) edit(parts, path, withoutUndeclared);
  const file = zipped(parts);
  const flaw = flawOf(file);
  if (flaw) throw new NotWhole(flaw);
  return file;
}
