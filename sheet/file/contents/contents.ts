import type { XmlElement } from "@rgrove/parse-xml";
import { type At, addressOf, atOf, type Block, cellsOf } from "../../../shared/xlsx/address";
import { type FileCell, type FileFormula, type FileRow, mostCells, rowsOf, tooManyCells } from "../../../shared/xlsx/cells";
import { movedFormula } from "../../../shared/xlsx/filldown";
import { meanings, rangeNames } from "../../../shared/xlsx/names";
import { relationsOf, type SheetPart, textOf, type Workbook } from "../../../shared/xlsx/parts";
import { sharedStringsOf } from "../../../shared/xlsx/strings";
import { tablesOf } from "../../../shared/xlsx/tables";
import { Unreadable } from "../../../shared/xlsx/unzip";
import { read } from "../../../shared/xlsx/xml";
import { turnedOnce } from "./pattern";
import { shellOf } from "./shell";
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
  /** The part without its rows. */
  readonly shell: string;
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

/** The other cells that array formulas fill: what they show is no content of theirs. */
function filledIn(cells: readonly FileCell[]): Set<string> {
  const filled = new Set<string>();
  for (const { formula, row, column } of cells)
    if (formula?.kind === "array")
      for (const at of formula.block ? cellsOf(formula.block) : []) if (at.row !== row || at.column !== column) filled.add(addressOf(at));
  return filled;
}

function contentsOf(part: SheetPart, workbook: Workbook, strings: readonly string[], vocabulary: Vocabulary): Contents {
  const xml = textOf(workbook.parts, part.path);
  const rows = rowsOf(xml, strings);
  const { root, xml: shell } = shellOf(xml, rows);
  const cells = rows.flatMap((row) => row.cells);
  const firsts = new Map(cells.filter(({ formula }) => formula?.shared && formula.text).map((cell) => [cell.formula!.shared!, cell]));
  const filled = filledIn(cells);
  const inPlace = { sheet: part.name, row: 0, column: 0 };
  const engineText = turnedOnce((formula) => engineFormula(formula, vocabulary, inPlace));
  const values = new Map<string, string>();
  const formulas: FormulaCell[] = [];
  for (const cell of cells) {
    const { row, column, formula, address } = cell;
    const shown = typed(cell);
    if (formula) {
      const { kind, block, dynamic } = formula;
      const filed = fullText(cell, firsts);
      Object.assign(inPlace, { row, column });
      const text = engineText(filed);
      formulas.push({ address, row, column, text, filed, kind, block: kind === "array" ? block : undefined, dynamic, shown });
    } else if (shown !== undefined && !filled.has(address)) values.set(address, shown);
  }
  return { name: part.name, part, xml, root, shell, rows, values, formulas };
}

/** Everything that is typed into a workbook, ready for the engine; `progress` hears how far it is, from 0 to 1. */
export function contents(workbook: Workbook, progress: (share: number) => void = () => {}): Read {
  const { parts, path, names } = workbook;
  const shared = relationsOf(parts, path).find(({ kind }) => kind === "sharedStrings")?.path;
  const strings = shared && parts.has(shared) ? sharedStringsOf(read(textOf(parts, shared))) : [];
  const vocabulary = { tables: tablesOf(workbook), meanings: meanings(names) };
  let count = 0;
  const sheets = workbook.sheets.map((part, i) => {
    const own = contentsOf(part, workbook, strings, vocabulary);
    count += own.rows.reduce((sum, { cells }) => sum + cells.length, 0);
    if (count > mostCells) throw tooManyCells();
    progress((i + 1) / workbook.sheets.length);
    return own;
  });
  return { sheets, names: rangeNames(names) };
}

/** More cells than these, blank ones counted, keep the engine busy for too long. */
const most = 40_000_000;

export const isNear = (columns: number, rows: number): boolean => columns * rows <= most;

function checkExtent(name: string, columns: number, rows: number): void {
  if (!isNear(columns, rows))
    throw new Unreadable(`the cells of its sheet ${name} reach too far (${rows} rows, ${columns} columns): delete the cells far away`);
}

/** How many columns and rows a sheet needs, with room to spare. */
export function extent({ name, rows, formulas }: Contents): { columns: number; rows: number } {
  const last = { ...atOf("Z99") } as { row: number; column: number };
  const reach = (row: number, column: number): void => {
    last.row = Math.max(last.row, row);
    last.column = Math.max(last.column, column);
  };
  for (const { block } of formulas) if (block) reach(block.bottom, block.right);
  for (const { cells } of rows) for (const { row, column, value, formula } of cells) if (value !== undefined || formula) reach(row, column);
  const size = { columns: last.column + 2, rows: last.row + 2 };
  checkExtent(name, size.columns, size.rows);
  return size;
}
