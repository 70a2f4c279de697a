import type { XmlElement } from "@rgrove/parse-xml";
import { type At, addressOf, atOf, type Block, cellsOf } from "../../shared/xlsx/address";
import { type FileCell, type FileFormula, type FileRow, rowsOf, sharedStringsOf } from "../../shared/xlsx/cells";
import { movedFormula } from "../../shared/xlsx/filldown";
import { meanings, rangeNames } from "../../shared/xlsx/names";
import { relationsOf, type SheetPart, textOf, type Workbook } from "../../shared/xlsx/parts";
import { tablesOf } from "../../shared/xlsx/tables";
import { Unreadable } from "../../shared/xlsx/unzip";
import { read } from "../../shared/xlsx/xml";
import { engineFormula, type Vocabulary } from "./spelling";

/** A cell with a formula, as the engine takes it and as the file showed it. */
export interface FormulaCell extends At {
  readonly address: string;
  /** As the engine reads it, its sign in front. */
  readonly text: string;
  /** As the file has it, filled down. */
  readonly filed: string;
  readonly kind: FileFormula["kind"];
  readonly block?: Block;
  readonly dynamic: boolean;
  /** What the file showed, as something typed; undefined where it showed nothing. */
  readonly shown: string | undefined;
}

/** A sheet of a file with everything that is typed into it. */
export interface Contents {
  readonly name: string;
  readonly part: SheetPart;
  readonly xml: string;
  readonly root: XmlElement;
  readonly rows: readonly FileRow[];
  /** Values by address; cells that an array formula fills are not among them. */
  readonly values: ReadonlyMap<string, string>;
  readonly formulas: readonly FormulaCell[];
}

export interface Read {
  readonly sheets: readonly Contents[];
  readonly names: Readonly<Record<string, string>>;
}

/** What the engine takes for a number, a date or a time when it is typed. */
const numeric = /^[\s\d.,:/%$€£¥()+eE-]*(?:[ap]m)?\s*$/i;

/** Text that would be taken for something else when typed stays text behind an apostrophe. */
const inert = (text: string): string =>
  /^['=#]|^\s*(?:true|false)\s*$/i.test(text) || (/\d/.test(text) && numeric.test(text)) ? `'${text}` : text;

function typed({ type, value }: FileCell): string | undefined {
  if (value === undefined) return undefined;
  if (type === "b") return value === "1" ? "TRUE" : "FALSE";
  if (type === "e") return value === "#REF!" ? "#REF" : value;
  return type === "n" || type === "d" ? value : inert(value);
}

/** The formula in full: of those filled down only the first is written out. */
function fullText({ formula, row, column }: FileCell, firsts: ReadonlyMap<string, FileCell>): string {
  if (formula!.kind !== "shared" || formula!.text) return formula!.text;
  const first = firsts.get(formula!.shared ?? "");
  return first ? movedFormula(first.formula!.text, { row: row - first.row, column: column - first.column }) : "";
}

function contentsOf(part: SheetPart, workbook: Workbook, strings: readonly string[], vocabulary: Vocabulary): Contents {
  const xml = textOf(workbook.parts, part.path);
  const root = read(xml);
  const rows = rowsOf(xml, strings);
  const cells = rows.flatMap((row) => row.cells);
  const firsts = new Map(cells.filter(({ formula }) => formula?.shared && formula.text).map((cell) => [cell.formula!.shared!, cell]));
  const filled = new Set<string>();
  for (const { formula, row, column } of cells)
    for (const at of formula?.block ? cellsOf(formula.block) : []) if (at.row !== row || at.column !== column) filled.add(addressOf(at));
  const values = new Map<string, string>();
  const formulas: FormulaCell[] = [];
  for (const cell of cells) {
    const { row, column, formula } = cell;
    const address = addressOf(cell);
    const shown = typed(cell);
    if (formula) {
      const filed = fullText(cell, firsts);
      const text = engineFormula(filed, vocabulary, { sheet: part.name, row, column });
      formulas.push({ address, row, column, text, filed, kind: formula.kind, block: formula.block, dynamic: formula.dynamic, shown });
    } else if (shown !== undefined && !filled.has(address)) values.set(address, shown);
  }
  return { name: part.name, part, xml, root, rows, values, formulas };
}

/** Everything that is typed into a workbook, ready for the engine. */
export function contents(workbook: Workbook): Read {
  const { parts, path, names } = workbook;
  const shared = relationsOf(parts, path).find(({ kind }) => kind === "sharedStrings")?.path;
  const strings = shared && parts.has(shared) ? sharedStringsOf(read(textOf(parts, shared))) : [];
  const vocabulary = { tables: tablesOf(workbook), meanings: meanings(names) };
  return { sheets: workbook.sheets.map((part) => contentsOf(part, workbook, strings, vocabulary)), names: rangeNames(names) };
}

/** More cells than these, blank ones counted, keep the engine busy for too long. */
const most = 40_000_000;

export function checkExtent(name: string, columns: number, rows: number): void {
  if (columns * rows > most)
    throw new Unreadable(`the cells of its sheet ${name} reach too far (${rows} rows, ${columns} columns): delete what stands far away`);
}

/** How many columns and rows a sheet needs, with room to spare. */
export function extent({ name, rows, formulas }: Contents): { readonly columns: number; readonly rows: number } {
  const ends = formulas.flatMap(({ block }) => (block ? [{ row: block.bottom, column: block.right }] : []));
  const filled = rows.flatMap(({ cells }) => cells.filter(({ value, formula }) => value !== undefined || formula));
  const cells: At[] = [...ends, ...filled, atOf("Z99")];
  const columns = cells.reduce((last, { column }) => Math.max(last, column), 0) + 2;
  const size = { columns, rows: cells.reduce((last, { row }) => Math.max(last, row), 0) + 2 };
  checkExtent(name, size.columns, size.rows);
  return size;
}
