import { type WriteSheet, writeXlsx } from "hucre/xlsx";
import { isFault } from "../../shared/outcome";
import { callsOurs } from "../calls";
import type { Book, Sheet } from "./book";
import type { Cached } from "./cached";
import { chartOf } from "./chart";
import { finished, made, type Part } from "./finish";
import { type Edition, written } from "./formula";
import { heightsOf } from "./heights";
import { alertStyles, measure, styleOf } from "./looks";
import { pageOf, titlesOf } from "./paper";
import { fixedText, key, ofKey, rangeText, refTo, sheetName } from "./place";
import { type Shown, shownCells } from "./shown";
import { valuesOf } from "./still";
import { validationsOf } from "./validation";

type RowDef = NonNullable<WriteSheet["rowDefs"]> extends Map<number, infer R> ? R : never;
type Written = NonNullable<WriteSheet["cells"]> extends Map<string, infer C> ? C : never;

const frozenNote =
  "A fixed value: only the add-in and the page can work it out. A single number says “needs add-in” once you change what it rests on; plans, curves and lists stay as they were.";

function cellOf(sheet: string, at: string, { cell, value, formula, spill, frozen, refused }: Shown, told: boolean): Written {
  const isFrozen = frozen && cell.look !== "heading";
  const style = refused
    ? styleOf("refused", cell.format)
    : styleOf(isFrozen ? "frozen" : cell.look, cell.format, isFrozen ? cell.look : undefined);
  const code = isFault(value) ? value.error : value;
  const extra = {
    style,
    ...(cell.to ? { hyperlink: { target: "", location: `${sheetName(cell.to)}!A1`, tooltip: cell.to } } : {}),
    ...(told ? { comment: { author: "Porewise", text: frozenNote } } : {}),
  };
  if (formula === undefined) return { value: code === "" ? null : (code ?? null), ...extra };
  const [row, column] = ofKey(at);
  // Otherwise Excel shows the call as =@PORE.… and returns one value where a column is asked for.
  const fills = spill ?? (callsOurs(formula) ? { rows: 1, columns: 1 } : undefined);
  const array = fills && {
    formulaType: "array" as const,
    formulaRef: rangeText(refTo(sheet, row, column, fills.rows, fills.columns)),
    formulaDynamic: true,
  };
  return { formula, formulaResult: code ?? "", ...array, ...extra };
}

/** The first of a frozen block: there the reader is told what that means. */
function isFirst(at: string, cells: ReadonlyMap<string, Shown>): boolean {
  const [row, column] = ofKey(at);
  const isFrozen = (r: number, c: number) => cells.get(key(r, c))?.frozen ?? false;
  return isFrozen(row, column) && !isFrozen(row - 1, column) && !isFrozen(row, column - 1);
}

/** The files of pictures, by their names. */
export type Pictures = ReadonlyMap<string, Uint8Array>;

const imagesOf = ({ pictures }: Sheet, files: Pictures): WriteSheet["images"] =>
  pictures.flatMap(({ file, at, alt }) => {
    const data = files.get(file);
    const anchor = { from: { row: at.row, col: at.column }, to: { row: at.row + at.rows, col: at.column + at.columns } };
    return data ? [{ data, type: "png" as const, anchor, altText: alt }] : [];
  });

/** Heights of rows, and which are folded away under the row before them. */
function rowsOf(sheet: Sheet, cells: ReadonlyMap<string, Shown>): NonNullable<WriteSheet["rowDefs"]> {
  const rows = new Map<number, RowDef>([...heightsOf(sheet, cells)].map(([row, height]) => [row, { height }]));
  for (const { first, last } of sheet.folds) {
    for (let row = first; row <= last; row++) rows.set(row, { ...rows.get(row), outlineLevel: 1, hidden: true });
    rows.set(first - 1, { ...rows.get(first - 1), collapsed: true });
  }
  return rows;
}

/** Where the cursor waits when a sheet is first shown: where a person types first. */
function cursorOf({ cursor, cells }: Sheet): { readonly row: number; readonly column: number } | undefined {
  if (cursor) return cursor;
  const typed = [...cells].filter(([, { look }]) => look === "input" || look === "tick").map(([at]) => ofKey(at));
  const [first] = typed.sort(([a, b], [c, d]) => a - c || b - d);
  return first && { row: first[0], column: first[1] };
}

function sheetOf(sheet: Sheet, edition: Edition, cached: Cached, book: Book, paper: "letter" | "a4", pictures: Pictures): WriteSheet {
  const cells = shownCells(sheet, edition, cached, valuesOf(book.sheets));
  const { footer = 11 } = sheet.print;
  return {
    name: sheet.name,
    columns: sheet.widths.map((width, i) => ({ width, ...(i >= (sheet.hidden ?? i + 1) ? { hidden: true } : {}) })),
    cells: new Map([...cells].map(([at, shown]) => [at, cellOf(sheet.name, at, shown, isFirst(at, cells))])),
    rowDefs: rowsOf(sheet, cells),
    ...(sheet.folds.length ? { outlineProperties: { summaryBelow: false } } : {}),
    images: imagesOf(sheet, pictures),
    merges: sheet.merges.map(({ row, column, rows, columns }) => ({
      startRow: row,
      startCol: column,
      endRow: row + rows - 1,
      endCol: column + columns - 1,
    })),
    tables: sheet.tables.map(({ name, titles, at }) => ({
      name,
      range: rangeText(at),
      columns: titles.map((title) => ({ name: title })),
      style: "TableStyleLight1",
      showRowStripes: false,
      showAutoFilter: false,
    })),
    dataValidations: validationsOf(sheet),
    conditionalRules: sheet.alerts.map(({ over, when, as }, i) => ({
      type: "expression",
      priority: i + 1,
      formula: written(when, edition, sheet.name, "alert") ?? "FALSE",
      range: rangeText(over),
      style: alertStyles[as],
    })),
    freezePane: sheet.frozen,
    charts: sheet.charts.map(chartOf),
    rowBreaks: sheet.breaks,
    view: { showGridLines: false },
    a11y: { summary: sheet.purpose, headerRow: sheet.print.titleRow },
    pageSetup: pageOf(sheet, titlesOf(sheet), Math.max(...[...cells.keys()].map((at) => ofKey(at)[0])) + 1, paper),
    headerFooter: { oddFooter: `&L&${footer}Porewise: &A&R&${footer}Page &P of &N` },
  };
}

/** The book as a file, in one edition, with the values its formulas had. */
export async function xlsx(
  book: Book,
  edition: Edition,
  cached: Cached,
  paper: "letter" | "a4",
  parts: readonly Part[] = [],
  pictures: Pictures = new Map(),
): Promise<Uint8Array> {
  const file = await writeXlsx({
    sheets: book.sheets.map((sheet) => sheetOf(sheet, edition, cached, book, paper, pictures)),
    namedRanges: book.names.map(({ name, ref }) => ({ name, range: fixedText(ref) })),
    properties: {
      title: book.title,
      subject: "Stabilizing wood with resin under vacuum",
      description: book.sheets[0].purpose,
      keywords: "wood, resin, vacuum, soak, bake, cost",
      created: made,
      modified: made,
    },
    defaultFont: measure,
  });
  return finished(
    file,
    parts,
    book.sheets.map((sheet) => cursorOf(sheet)),
  );
}
