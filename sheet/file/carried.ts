import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import type { Outcome } from "../../shared/outcome";
import { addressOf, type Block, blockAt, cellsOf as cellsIn } from "../../shared/xlsx/address";
import { rowsOf } from "../../shared/xlsx/cells";
import type { NewFormula } from "../../shared/xlsx/edits";
import { dynamicMark } from "../../shared/xlsx/metadata";
import { withEnds } from "../../shared/xlsx/openends";
import { edit } from "../../shared/xlsx/package";
import type { Parts } from "../../shared/xlsx/unzip";
import { valuesWritten } from "../../shared/xlsx/values";
import { flawOf, NotWhole } from "../../shared/xlsx/whole";
import { encoded } from "../../shared/xlsx/xml";
import { zipped } from "../../shared/xlsx/zip";
import { asStored, callsOurs } from "../../src/calls";
import { shownBy } from "../cell";
import { followedOf } from "./beside/followed";
import { solidColours } from "./beside/looks";
import { writeBeside } from "./beside/pieces";
import { withFormats } from "./beside/resultformats";
import { withoutStrangers } from "./beside/strangers";
import type { Beside } from "./beside/workbook";
import { aroundIn, type Reader, unknownOf } from "./formulas/known";
import { needsArray } from "./formulas/many";
import { fileFormula, untouchedFormula, type Writer } from "./formulas/outward";

export type Engine = Pick<typeof OSpreadsheet, "Model"> & Reader & Writer;

type SheetData = OSpreadsheet.WorkbookData["sheets"][number];

const pictureOf = (url: string): Uint8Array => {
  const [head, body = ""] = url.split(",", 2);
  const text = head.endsWith(";base64") ? atob(body) : decodeURIComponent(body);
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
};

/** The engine's own file, part by part. */
async function written(data: object, { Model }: Engine): Promise<Parts> {
  const { files } = await new Model(data).exportXLSX();
  return new Map(files.map((file) => [file.path, "imageSrc" in file ? pictureOf(file.imageSrc) : encoded(file.content)] as const));
}

/** One sheet: formulas as other programs read them, the values of every cell that a formula fills. */
function finishedSheet(xml: string, sheet: SheetData, model: Model, engine: Engine, mark: () => number): string {
  const { getters } = model;
  const rows = rowsOf(xml, []);
  const around = aroundIn(model);
  const values = new Map<string, Outcome | undefined>();
  const formulas = new Map<string, NewFormula>();
  for (const file of rows.flatMap(({ cells }) => cells)) {
    const position = { sheetId: sheet.id, row: file.row, col: file.column };
    const cell = getters.getCell(position);
    if (!cell?.isFormula) continue;
    const address = addressOf(file);
    const typed = withEnds(cell.compiledFormula.toFormulaString(getters));
    if (unknownOf(typed, engine, around)) {
      // Without a value: a program that knows the formula works it out.
      formulas.set(address, { formula: untouchedFormula(typed) });
      values.set(address, undefined);
      continue;
    }
    const zone = getters.getSpreadZone(position);
    const block: Block | undefined = zone ?? (callsOurs(typed) || needsArray(typed, engine, getters) ? blockAt(file) : undefined);
    formulas.set(address, { formula: fileFormula(typed, file.formula?.text ?? typed.slice(1), engine), block, mark: block && mark() });
    for (const one of cellsIn(zone ?? blockAt(file)))
      values.set(addressOf(one), shownBy(getters.getEvaluatedCell({ sheetId: sheet.id, row: one.row, col: one.column })));
  }
  return storedRules(valuesWritten({ xml, rows }, values, formulas));
}

/** Rules and lists of a sheet may call our functions too. */
const storedRules = (xml: string): string => xml.replace(/(<formula[12]?>)([^<]*)/g, (_, tag, formula) => tag + asStored(formula));

const book = "xl/workbook.xml";

/** Text that the engine holds behind an apostrophe needs none in a file. */
const withoutApostrophes = (xml: string): string => xml.replace(/(<t(?:\s[^>]*)?>\s*)'/g, "$1");

/**
 * A workbook written anew: the engine's own file, and beside it what was read of the file that it came from. For workbooks without
 * a file, and for what was made on the page and cannot be written into one.
 */
export async function carried(model: Model, beside: Beside, engine: Engine): Promise<Uint8Array> {
  const data = withFormats(model);
  const parts = await written(data, engine);
  const sheets = data.sheets.map((sheet, i) => ({ sheet, path: `xl/worksheets/sheet${i}.xml`, here: followedOf(data, sheet.id) }));
  for (const { sheet, path } of sheets)
    edit(parts, path, (xml) => finishedSheet(xml, sheet, model, engine, () => dynamicMark(parts, book)));
  edit(parts, "xl/sharedStrings.xml", withoutApostrophes);
  const tidied = ["xl/styles.xml", ...sheets.map(({ path }) => path)];
  for (const path of tidied) edit(parts, path, solidColours);
  writeBeside({ parts, path: book, model, data, sheets }, beside);
  for (const path of tidied) edit(parts, path, withoutStrangers);
  const file = zipped(parts);
  const flaw = flawOf(file);
  if (flaw) throw new NotWhole(flaw);
  return file;
}
