import type { Model } from "@odoo/o-spreadsheet";
import * as engine from "@odoo/o-spreadsheet";
import type { At } from "../../shared/xlsx/address";
import { engineSheet } from "../../shared/xlsx/sheetname";
import { Unreadable } from "../../shared/xlsx/unzip";
import { callsOurs } from "../../src/calls";
import { model } from "../engine";
import { version } from "../enginedata";
import { budgeted } from "../guard";
import { type Contents, extent, type FormulaCell, type Read } from "./contents/contents";
import { askedOnce } from "./contents/pattern";
import { aroundOf, unknownOf } from "./formulas/known";

/** Formulas that are not calculated, by sheet and address, each with the reason. */
type Left = Map<string, string>;

export const keyOf = (sheet: string, { address }: { address: string }) => `${sheet}!${address}`;

/** An array formula of the old kind fills its cells and no more; any other formula that fills several shows its first value. */
function fitted({ text, kind, block, dynamic }: FormulaCell, narrow: boolean): string {
  if (narrow) return `=ARRAY.CONSTRAIN(${text.slice(1)},1,1)`;
  if (kind !== "array" || dynamic || !block) return text;
  return `=ARRAY.CONSTRAIN(${text.slice(1)},${block.bottom - block.top + 1},${block.right - block.left + 1})`;
}

/** A safe id for a sheet: the engine uses ids as object keys, so never a name from the file. */
const idOf = (sheet: string): string => `sheet ${sheet}`;

function sheetData(sheet: Contents, left: Left, narrow: ReadonlySet<string>): object {
  const cells = Object.fromEntries(sheet.values);
  for (const formula of sheet.formulas) {
    const key = keyOf(sheet.name, formula);
    if (!left.has(key)) cells[formula.address] = fitted(formula, narrow.has(key));
    else if (formula.shown !== undefined) cells[formula.address] = formula.shown;
  }
  const rows = Object.fromEntries(sheet.rows.filter(({ hidden }) => hidden).map(({ row }) => [row, { isHidden: true }]));
  const { columns: colNumber, rows: rowNumber } = extent(sheet);
  return { id: idOf(sheet.name), name: engineSheet(sheet.name), colNumber, rowNumber, cells, rows };
}

const evaluated = ({ sheets, names }: Read, left: Left, narrow: ReadonlySet<string>): Model =>
  model({ version, sheets: sheets.map((sheet) => sheetData(sheet, left, narrow)), namedRanges: names });

export type Position = Parameters<Model["getters"]["getEvaluatedCell"]>[0];

export const placed = (sheet: string, { row, column }: At): Position => ({ sheetId: idOf(sheet), row, col: column });

type Found = readonly [key: string, position: Position];

/** The cells of circular references, without those that only depend on them. */
function circle(waiting: readonly Found[], { getters }: Model): string[] {
  const ranges = waiting.map(([, position]) => {
    const cell = getters.getCell(position);
    return cell?.isFormula
      ? [...cell.compiledFormula.rangeDependencies, ...cell.compiledFormula.getNamedRangesInFormula(getters).map(({ range }) => range)]
      : [];
  });
  const isIn = (range: (typeof ranges)[number][number], { sheetId, row, col }: Position) =>
    range.sheetId === sheetId && row >= range.zone.top && row <= range.zone.bottom && col >= range.zone.left && col <= range.zone.right;
  let rest = waiting.map((_, i) => i);
  for (;;) {
    const needed = rest.filter((i) => rest.some((j) => ranges[j].some((range) => isIn(range, waiting[i][1]))));
    if (needed.length === rest.length || !needed.length) return rest.map((i) => waiting[i][0]);
    rest = needed;
  }
}

/** Whether it is this formula, not one that it refers to, that the engine cannot take. */
function isMisread({ getters }: Model, position: Position): boolean {
  const cell = getters.getCell(position);
  return cell?.isFormula === true && cell.compiledFormula.isBadExpression;
}

/** One round: what the engine made of the formulas, and which must be left alone, or narrowed to one cell, before the next. */
function lookOver(read: Read, book: Model, left: Left, narrow: Set<string>): boolean {
  const before = left.size + narrow.size;
  const waiting: Found[] = [];
  for (const sheet of read.sheets)
    for (const formula of sheet.formulas) {
      const key = keyOf(sheet.name, formula);
      if (left.has(key) || narrow.has(key)) continue;
      const position = placed(sheet.name, formula);
      const { value, message = "" } = book.getters.getEvaluatedCell(position);
      if (value === "#CYCLE") waiting.push([key, position]);
      else if (value === "#BAD_EXPR" && isMisread(book, position) && !/PORE\./.test(message))
        left.set(key, `the engine reads it otherwise: ${message}`);
      else if (formula.kind !== "array" && (book.getters.getSpreadZone(position) || value === "#SPILL!")) {
        if (callsOurs(formula.text)) narrow.add(key);
        else left.set(key, "it is not an array formula, but gives several values");
      }
    }
  for (const key of circle(waiting, book)) left.set(key, "it refers to itself");
  return left.size + narrow.size > before;
}

/** Calculates what can be calculated, within what a workbook may take. */
export function calculated(read: Read): Calculated {
  const { result, over } = budgeted(() => inRounds(read));
  if (over) throw new Unreadable("its formulas take longer than 20 seconds, or fill more than five million cells");
  return result;
}

interface Calculated {
  readonly book: Model;
  readonly left: Left;
  readonly narrow: ReadonlySet<string>;
}

/** Rounds of calculation until nothing more has to be left alone; each settles what depends on the one before. */
function inRounds(read: Read): Calculated {
  const around = aroundOf(read);
  const isUnknown = askedOnce((formula) => unknownOf(formula, engine, around) !== undefined);
  const left: Left = new Map();
  const narrow = new Set<string>();
  for (const sheet of read.sheets)
    for (const formula of sheet.formulas) {
      const unknown = formula.kind === "other" ? "a table of trials" : isUnknown(formula.text) && unknownOf(formula.text, engine, around);
      if (unknown) left.set(keyOf(sheet.name, formula), `the engine does not know ${unknown}`);
    }
  let book = evaluated(read, left, narrow);
  while (lookOver(read, book, left, narrow)) book = evaluated(read, left, narrow);
  return { book, left, narrow };
}
