import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import type { Outcome } from "../../shared/outcome";
import { addressOf, type Block, blockAt, cellsOf as cellsIn } from "../../shared/xlsx/address";
import { rowsOf } from "../../shared/xlsx/cells";
import { addDocuments } from "../../shared/xlsx/documents";
import type { NewFormula } from "../../shared/xlsx/edits";
import { dynamicMark } from "../../shared/xlsx/metadata";
import { namesXml } from "../../shared/xlsx/names";
import { withEnds } from "../../shared/xlsx/openends";
import { edit } from "../../shared/xlsx/package";
import type { Parts } from "../../shared/xlsx/unzip";
import { valuesWritten } from "../../shared/xlsx/values";
import { flawOf, NotWhole } from "../../shared/xlsx/whole";
import { encoded } from "../../shared/xlsx/xml";
import { zipped } from "../../shared/xlsx/zip";
import { asStored, callsOurs } from "../../src/calls";
import { shownBy } from "../cell";
import { restoreCharts } from "./beside/charts";
import { followedOf } from "./beside/followed";
import { withLinks } from "./beside/links";
import { addLooks, solidColours } from "./beside/looks";
import { addNotes } from "./beside/notes";
import { printFor, withPrint } from "./beside/print";
import { addProperties } from "./beside/properties";
import { withFormats } from "./beside/resultformats";
import { rankedRules } from "./beside/rules";
import { withSizes } from "./beside/sizes";
import { withoutStrangers } from "./beside/strangers";
import { nameTables } from "./beside/tables";
import { withValidations } from "./beside/validations";
import type { Beside } from "./beside/workbook";
import { type Reader, unknownOf } from "./formulas/known";
import { needsArray } from "./formulas/many";
import { fileFormula, untouchedFormula, type Writer } from "./formulas/outward";

export type Engine = Pick<typeof OSpreadsheet, "Model" | "DEFAULT_LOCALE"> & Reader & Writer;

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
  const around = {
    names: new Set(getters.getNamedRanges().map(({ name }) => name.toLowerCase())),
    sheets: new Set(getters.getSheetIds().map((id) => getters.getSheetName(id).toLowerCase())),
  };
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
  const here = (sheetId: string) => followedOf(data, sheetId);
  const there = (sheetId: string) => ({ name: data.sheets.find(({ id }) => id === sheetId)?.name, ranges: here(sheetId) });
  const prints = data.sheets.map((sheet) => printFor(sheet, beside.print[sheet.id], here(sheet.id)));
  const pathOf = (i: number) => `xl/worksheets/sheet${i}.xml`;
  data.sheets.forEach((sheet, i) => {
    const kept = beside.sheets?.[sheet.id];
    const measure = {
      column: (index: number) => (index < sheet.colNumber ? model.getters.getColSize(sheet.id, index) : 0),
      row: (index: number) => (index < sheet.rowNumber ? model.getters.getRowSize(sheet.id, index) : 0),
    };
    restoreCharts(parts, pathOf(i), sheet, kept?.charts ?? {}, measure);
    edit(parts, pathOf(i), (xml) => {
      const own = withValidations(
        rankedRules(finishedSheet(xml, sheet, model, engine, () => dynamicMark(parts, book))),
        sheet,
        kept?.validations ?? {},
      );
      const linked = withLinks(kept ? withSizes(own, kept.sizes) : own, kept?.links ?? [], here(sheet.id), there);
      const printed = withPrint(addNotes(parts, pathOf(i), linked, kept?.notes ?? [], here(sheet.id), i + 1), prints[i]);
      return withoutStrangers(solidColours(printed));
    });
  });
  nameTables(
    parts,
    data.sheets.map(({ id }, i) => ({ path: pathOf(i), tables: beside.sheets?.[id]?.tables ?? [], here: here(id) })),
    data.namedRanges,
  );
  edit(parts, book, (xml) => xml.replace("</sheets>", () => `</sheets>${namesXml(data.namedRanges, prints)}`));
  edit(parts, "xl/sharedStrings.xml", withoutApostrophes);
  edit(parts, "xl/styles.xml", solidColours);
  if (beside.looks) addLooks(parts, book, beside.looks);
  edit(parts, "xl/styles.xml", withoutStrangers);
  if (beside.properties) addProperties(parts, beside.properties);
  addDocuments(parts, book, beside.documents);
  const file = zipped(parts);
  const flaw = flawOf(file);
  if (flaw) throw new NotWhole(flaw);
  return file;
}
