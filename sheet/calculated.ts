import type { EvaluatedCell, Model } from "@odoo/o-spreadsheet";
import type { At } from "./address";
import { type Contents, extent, type FormulaCell, type Read } from "./contents";
import { version } from "./data";
import { model } from "./engine";
import { type Around, unknownOf } from "./known";
import { callsOurs } from "./stored";

/** Formulas that are not calculated, by sheet and address, each with the reason. */
type Left = Map<string, string>;

export const keyOf = (sheet: string, { address }: { address: string }) => `${sheet}!${address}`;

/** An array formula of the old kind fills its cells and no more; any other formula that fills several shows its first value. */
function fitted({ text, kind, block, dynamic }: FormulaCell, narrow: boolean): string {
  if (narrow) return `=ARRAY.CONSTRAIN(${text.slice(1)},1,1)`;
  if (kind !== "array" || dynamic || !block) return text;
  return `=ARRAY.CONSTRAIN(${text.slice(1)},${block.bottom - block.top + 1},${block.right - block.left + 1})`;
}

function sheetData(sheet: Contents, left: Left, narrow: ReadonlySet<string>): object {
  const cells = Object.fromEntries(sheet.values);
  for (const formula of sheet.formulas) {
    const key = keyOf(sheet.name, formula);
    if (!left.has(key)) cells[formula.address] = fitted(formula, narrow.has(key));
    else if (formula.shown !== undefined) cells[formula.address] = formula.shown;
  }
  const rows = Object.fromEntries(sheet.rows.filter(({ hidden }) => hidden).map(({ row }) => [row, { isHidden: true }]));
  const { columns: colNumber, rows: rowNumber } = extent(sheet);
  return { id: sheet.name, name: sheet.name, colNumber, rowNumber, cells, rows };
}

const evaluated = ({ sheets, names }: Read, left: Left, narrow: ReadonlySet<string>): Model =>
  model({ version, sheets: sheets.map((sheet) => sheetData(sheet, left, narrow)), namedRanges: names });

export const placed = (sheetId: string, { row, column }: At) => ({ sheetId, row, col: column });

/** Why a formula that reads well cannot be calculated all the same. */
function refusal({ value, message }: EvaluatedCell): string | undefined {
  if (value === "#CYCLE") return "it refers to itself";
  return value === "#BAD_EXPR" && !/PORE\./.test(message ?? "") ? `the engine reads it otherwise: ${message}` : undefined;
}

/** One look at what the engine made of the formulas: what must be left, or narrowed to one cell, before the next. */
function lookOver(read: Read, book: Model, left: Left, narrow: Set<string>): boolean {
  const before = left.size + narrow.size;
  for (const sheet of read.sheets)
    for (const formula of sheet.formulas) {
      const key = keyOf(sheet.name, formula);
      if (left.has(key) || narrow.has(key)) continue;
      const position = placed(sheet.name, formula);
      const cell = book.getters.getEvaluatedCell(position);
      const reason = refusal(cell);
      if (reason) left.set(key, reason);
      else if (formula.kind !== "array" && (book.getters.getSpreadZone(position) || cell.value === "#SPILL!")) {
        if (callsOurs(formula.text)) narrow.add(key);
        else left.set(key, "it is no array formula, yet gives several values");
      }
    }
  return left.size + narrow.size > before;
}

/** Rounds of calculation until nothing more has to be left alone; each settles what depends on the one before. */
export function calculated(read: Read): { readonly book: Model; readonly left: Left; readonly narrow: ReadonlySet<string> } {
  const around: Around = {
    names: new Set(Object.keys(read.names).map((name) => name.toLowerCase())),
    sheets: new Set(read.sheets.map(({ name }) => name.toLowerCase())),
  };
  const left: Left = new Map();
  const narrow = new Set<string>();
  for (const sheet of read.sheets)
    for (const formula of sheet.formulas) {
      const unknown = formula.kind === "other" ? "a table of trials" : unknownOf(formula.text, around);
      if (unknown) left.set(keyOf(sheet.name, formula), `the engine does not know ${unknown}`);
    }
  let book = evaluated(read, left, narrow);
  while (lookOver(read, book, left, narrow)) book = evaluated(read, left, narrow);
  return { book, left, narrow };
}
