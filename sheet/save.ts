import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import type { Outcome } from "../shared/outcome";
import { addressOf, type Block, cellsOf as cellsIn } from "./address";
import { cellOf } from "./cell";
import { rowsOf } from "./cells";
import { addDocuments, type Documents } from "./documents";
import { type Reader, unknownOf } from "./known";
import { needsArray } from "./many";
import { namesXml } from "./names";
import { fileFormula, untouchedFormula, type Writer } from "./outward";
import { textOf } from "./parts";
import { type Print, printFor, withPrint } from "./print";
import { asStored, callsOurs } from "./stored";
import type { Parts } from "./unzip";
import { type NewFormula, valuesWritten } from "./values";
import { encoded, read } from "./xml";
import { zipped } from "./zip";

/** What a workbook holds beside what the engine keeps. */
export interface Beside {
  readonly documents: Documents;
  /** By the engine's names of sheets, which stay when a person gives a sheet another name. */
  readonly print: Readonly<Record<string, Print>>;
}

export type Engine = Pick<typeof OSpreadsheet, "Model" | "DEFAULT_LOCALE"> & Reader & Writer;

type SheetData = OSpreadsheet.WorkbookData["sheets"][number];

const isDate = (format: string): boolean => /[dyhs]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]/g, ""));

/** Whether a number format belongs to a result, and is no more than the engine's guess from what the result was made of. */
function isOfResult({ getters }: Model, position: OSpreadsheet.CellPosition, format: string): boolean {
  if (isDate(format)) return true;
  const cell = getters.getCell(getters.getArrayFormulaSpreadingOn(position) ?? position);
  return cell?.isFormula === true && callsOurs(cell.compiledFormula.toFormulaString(getters));
}

/** The number formats that came with results become the cells' own: the engine's writer knows no others. */
function withFormats(model: Model): OSpreadsheet.WorkbookData {
  const data = model.exportData();
  const numbers = new Map(Object.entries(data.formats).map(([number, format]) => [format, Number(number)]));
  const numberOf = (format: string): number => {
    if (!numbers.has(format)) numbers.set(format, Math.max(0, ...numbers.values()) + 1);
    return numbers.get(format)!;
  };
  for (const sheet of data.sheets)
    for (const position of model.getters.getEvaluatedCellsPositions(sheet.id)) {
      const { format, type } = model.getters.getEvaluatedCell(position);
      if (format && type !== "error" && model.getters.getCell(position)?.format !== format && isOfResult(model, position, format))
        sheet.formats[addressOf({ row: position.row, column: position.col })] = numberOf(format);
    }
  data.formats = Object.fromEntries([...numbers].map(([format, number]) => [number, format]));
  return data;
}

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
function finishedSheet(xml: string, sheet: SheetData, model: Model, engine: Engine): string {
  const { getters } = model;
  const root = read(xml);
  const rows = rowsOf(root, []);
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
    const typed = cell.compiledFormula.toFormulaString(getters, { useBoundedReference: true });
    if (unknownOf(typed, engine, around)) {
      // Without a value: a program that knows the formula works it out.
      formulas.set(address, { formula: untouchedFormula(typed) });
      values.set(address, undefined);
      continue;
    }
    const zone = getters.getSpreadZone(position);
    const block: Block | undefined = zone ?? (needsArray(typed, engine, getters) ? at(file) : undefined);
    formulas.set(address, { formula: fileFormula(typed, file.formula?.text ?? typed.slice(1), engine), block });
    for (const one of cellsIn(zone ?? at(file))) values.set(addressOf(one), shownIn(model, sheet.id, one));
  }
  return storedRules(valuesWritten({ xml, root, rows }, values, formulas));
}

/** Rules and lists of a sheet may call our functions too. */
const storedRules = (xml: string): string => xml.replace(/(<formula[12]?>)([^<]*)/g, (_, tag, formula) => tag + asStored(formula));

const at = ({ row, column }: { row: number; column: number }): Block => ({ top: row, bottom: row, left: column, right: column });

function shownIn({ getters }: Model, sheetId: string, { row, column }: { row: number; column: number }): Outcome | undefined {
  const cell = getters.getEvaluatedCell({ sheetId, row, col: column });
  return cell.type === "empty" ? undefined : ((cellOf(cell) ?? undefined) as Outcome | undefined);
}

/** Text that the engine holds behind an apostrophe needs none in a file. */
const withoutApostrophes = (xml: string): string => xml.replace(/(<t(?:\s[^>]*)?>\s*)'/g, "$1");

/** The workbook of the page as a file for any spreadsheet program. */
export async function saved(model: Model, beside: Beside, engine: Engine): Promise<Uint8Array> {
  const data = withFormats(model);
  const parts = await written(data, engine);
  const edit = (path: string, change: (xml: string) => string) => parts.set(path, encoded(change(textOf(parts, path))));
  const prints = data.sheets.map((sheet) => printFor(sheet, beside.print[sheet.id]));
  data.sheets.forEach((sheet, i) => {
    edit(`xl/worksheets/sheet${i}.xml`, (xml) => withPrint(finishedSheet(xml, sheet, model, engine), prints[i]));
  });
  edit("xl/workbook.xml", (xml) => xml.replace("</sheets>", () => `</sheets>${namesXml(data.namedRanges, prints)}`));
  edit("xl/sharedStrings.xml", withoutApostrophes);
  addDocuments(parts, "xl/workbook.xml", beside.documents);
  return zipped(parts);
}
