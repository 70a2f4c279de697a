import type { WorkbookData } from "@odoo/o-spreadsheet";
import { blockAt, blockOf, rangeOf, sizeOf } from "../../shared/xlsx/address";
import type { Workbook } from "../../shared/xlsx/parts";
import { engineSheet } from "../../shared/xlsx/sheetname";
import type { FileRead } from "./beside/piece";
import { type Places, takePlaces } from "./beside/ruleplaces";
import { cellStyles, type FileStyle } from "./cellstyles";
import { type Contents, extent, isNear } from "./contents/contents";
import { columnsOf, headers } from "./headers";
import { shownLinks } from "./shownlinks";

type SheetData = WorkbookData["sheets"][number];

/** What stands in the cells of a sheet; a formula of one program only shows what it showed. */
function cellsOf(own: Contents, unknown: ReadonlySet<string>, links: ReadonlyMap<string, string>): SheetData["cells"] {
  const cells: SheetData["cells"] = Object.fromEntries(own.values);
  for (const [address, link] of links) if (cells[address] !== undefined) cells[address] = link;
  for (const { address, text, filed, kind, shown } of own.formulas)
    cells[address] = kind === "other" ? (shown ?? "") : unknown.has(`${own.name}!${address}`) ? `=${filed}` : text;
  return cells;
}

/** Larger sheets are refused: they would exhaust memory. */
const largestMerge = 100_000;

/** What reaches beyond the sheet's cells is kept in the file and not shown: the engine builds what lies between. */
function withinExtent(sheet: SheetData, size: { readonly rows: number; readonly columns: number }): void {
  const fits = (range: string) => {
    const { bottom, right } = blockOf(range);
    return bottom < size.rows && right < size.columns;
  };
  sheet.merges = (sheet.merges ?? []).filter((range) => fits(range) && sizeOf(blockOf(range)) <= largestMerge);
  sheet.tables = (sheet.tables ?? []).filter(({ range }) => fits(range));
  sheet.figures = (sheet.figures ?? []).filter(({ col, row }) => col < size.columns && row < size.rows);
  const panes = sheet.panes;
  if (panes && (panes.xSplit >= size.columns || panes.ySplit >= size.rows)) sheet.panes = { xSplit: 0, ySplit: 0 };
}

/** How far a sheet reaches: what is in its cells; and blank cells, merged cells, tables and pictures where these stand near. */
function sizeOfSheet(own: Contents, sheet: SheetData): { readonly rows: number; readonly columns: number } {
  const size = extent(own);
  const last = { bottom: 0, right: 0 };
  for (const { cells } of own.rows) {
    last.bottom = Math.max(last.bottom, cells.at(-1)?.row ?? 0);
    for (const { column } of cells) last.right = Math.max(last.right, column);
  }
  const far = [
    last,
    ...(sheet.merges ?? []).map(blockOf),
    ...(sheet.tables ?? []).map(({ range }) => blockOf(range)),
    ...(sheet.figures ?? []).map(({ col, row }) => ({ bottom: row + 20, right: col + 10 })),
  ];
  for (const { bottom, right } of far) {
    const wider = { rows: Math.max(size.rows, bottom + 2), columns: Math.max(size.columns, right + 2) };
    if (isNear(wider.columns, wider.rows)) Object.assign(size, wider);
  }
  return size;
}

/** Cells with a formula and no number format: what their results bring along is shown, and is not the file's. In runs down. */
function unformatted(own: Contents, looks: readonly FileStyle[], formats: WorkbookData["formats"]): string[] {
  const lookAt = new Map<string, number>();
  for (const { cells } of own.rows) for (const { address, look, formula } of cells) if (formula) lookAt.set(address, look);
  const hasFormat = (address: string) => {
    const look = lookAt.get(address);
    return look ? formats[(looks[look]?.format ?? -1) + 1] !== undefined : false;
  };
  const runs: { top: number; left: number; bottom: number; right: number }[] = [];
  const cells = own.formulas.filter(({ address }) => !hasFormat(address));
  for (const { row, column, block } of [...cells].sort((a, b) => a.column - b.column || a.row - b.row)) {
    const own = block ?? blockAt({ row, column });
    const last = runs.at(-1);
    if (last && last.left === own.left && last.right === own.right && last.bottom + 1 === own.top) last.bottom = own.bottom;
    else runs.push({ ...own });
  }
  return runs.map(rangeOf);
}

interface Shared {
  readonly workbook: Workbook;
  readonly data: WorkbookData;
  readonly ids: ReadonlyMap<string, string>;
  readonly fileStyles: readonly FileStyle[];
  readonly unknown: ReadonlySet<string>;
}

/** Completes what the engine read of a sheet: its cells, their styles, its rows and columns; returns where in the part its rules are. */
export function completeSheet(
  own: Contents,
  sheet: SheetData,
  { workbook, data, ids, fileStyles, unknown }: Shared,
  follow: FileRead["follow"],
): Places {
  sheet.name = engineSheet(own.name);
  const places = takePlaces(sheet);
  const columns = columnsOf(own.root);
  const size = sizeOfSheet(own, sheet);
  withinExtent(sheet, size);
  Object.assign(sheet, headers(own.root, own.rows, columns, size), cellStyles(own.rows, columns, size, fileStyles, data));
  sheet.cells = cellsOf(own, unknown, shownLinks(own, workbook, ids));
  [sheet.colNumber, sheet.rowNumber] = [size.columns, size.rows];
  for (const [i, range] of unformatted(own, fileStyles, data.formats).entries()) follow(sheet.id, `unformatted ${i}`, range);
  return places;
}
