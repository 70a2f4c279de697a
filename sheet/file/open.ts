import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { blockAt, rangeOf } from "../../shared/xlsx/address";
import { documentsOf } from "../../shared/xlsx/documents";
import { type Workbook, workbookOf } from "../../shared/xlsx/parts";
import { engineSheet } from "../../shared/xlsx/sheetname";
import { tablesOf } from "../../shared/xlsx/tables";
import { unzip } from "../../shared/xlsx/unzip";
import { version } from "../data";
import type { Followed } from "./beside/followed";
import { looksOf } from "./beside/looks";
import { propertiesOf } from "./beside/properties";
import { leaveSizes } from "./beside/rules";
import { type Follow, type SheetBeside, sheetBeside } from "./beside/sheet";
import type { Beside } from "./beside/workbook";
import { type Contents, checkExtent, contents, extent, type Read } from "./contents";
import { noStructure } from "./kept/structure";
import { aroundOf, type Reader, unknownOf } from "./known";
import { lost } from "./lost";
import { type Print, printOf } from "./print";
import { partsFor } from "./readable";

/** A workbook from disk as the page takes it. */
export interface Opened extends Beside {
  readonly book: object;
  /** What the page does not keep of it, in words. */
  readonly lost: readonly string[];
  /** Cells whose formulas the page does not know; they show an error and are saved as they came. */
  readonly unknown: readonly string[];
}

export type Engine = Pick<typeof OSpreadsheet, "load" | "helpers"> & Reader;

/** Cells without their looks: for a file whose looks the engine cannot read. */
const plainData = ({ sheets }: Read): WorkbookData =>
  ({ version, sheets: sheets.map(({ name }) => ({ id: name, name, cells: {} })), styles: {}, formats: {}, borders: {} }) as never;

function looks(workbook: Workbook, read: Read, { load }: Engine): { readonly data: WorkbookData; readonly failed: boolean } {
  const { debug } = console;
  console.debug = () => {};
  try {
    return { data: load(partsFor(workbook, read.names)), failed: false };
  } catch {
    return { data: plainData(read), failed: true };
  } finally {
    console.debug = debug;
  }
}

const isLink = (content: unknown) => typeof content === "string" && /^\[[^\]]+\]\([^)]+\)$/.test(content);

/** The engine's reader takes text such as "3/4" for a date and knows formulas of one program only: the cells are read by us. */
function withCells(sheet: WorkbookData["sheets"][number], own: Contents, unknown: ReadonlySet<string>): void {
  const links = Object.entries(sheet.cells).filter(([, content]) => isLink(content));
  const formulas = own.formulas.map(({ address, text, filed, kind, shown }) => [
    address,
    kind === "other" ? (shown ?? "") : unknown.has(`${own.name}!${address}`) ? `=${filed}` : text,
  ]);
  sheet.cells = { ...Object.fromEntries(own.values), ...Object.fromEntries(formulas), ...Object.fromEntries(links) };
  const { columns, rows } = extent(own);
  sheet.colNumber = Math.max(sheet.colNumber ?? 0, columns);
  sheet.rowNumber = Math.max(sheet.rowNumber ?? 0, rows);
  checkExtent(own.name, sheet.colNumber, sheet.rowNumber);
}

function unknownCells(read: Read, engine: Engine): string[] {
  const around = aroundOf(read);
  return read.sheets.flatMap(({ name, formulas }) =>
    formulas.filter(({ text, kind }) => kind !== "other" && unknownOf(text, engine, around)).map(({ address }) => `${name}!${address}`),
  );
}

/** Cells with a formula and no number format: what their results bring along is shown, and is not the file's. In runs down. */
function unformatted(own: Contents, sheet: WorkbookData["sheets"][number], formats: WorkbookData["formats"]): Follow[] {
  const runs: { top: number; left: number; bottom: number; right: number }[] = [];
  const cells = own.formulas.filter(({ address }) => formats[sheet.formats?.[address]] === undefined);
  for (const { row, column, block } of [...cells].sort((a, b) => a.column - b.column || a.row - b.row)) {
    const own = block ?? blockAt({ row, column });
    const last = runs.at(-1);
    if (last && last.left === own.left && last.right === own.right && last.bottom + 1 === own.top) last.bottom = own.bottom;
    else runs.push({ ...own });
  }
  return runs.map((run, i) => [sheet.id, `unformatted ${i}`, rangeOf(run)]);
}

function followedIn(follow: readonly Follow[], sheets: WorkbookData["sheets"]): Followed {
  const found: Record<string, Record<string, string>> = Object.fromEntries(sheets.map(({ id }) => [id, {}]));
  for (const [sheetId, key, range] of follow) if (found[sheetId]) found[sheetId][key] = range;
  return found;
}

/** Reads a workbook file for the page; throws Unreadable with the reason. */
export function opened(bytes: Uint8Array, engine: Engine): Opened {
  const workbook = workbookOf(unzip(bytes));
  const read = contents(workbook);
  const unknown = unknownCells(read, engine);
  const { data, failed } = looks(workbook, read, engine);
  const byName = new Map(data.sheets.map((sheet) => [sheet.name, sheet]));
  const print: Record<string, Print> = {};
  const sheets: Record<string, SheetBeside> = {};
  const follow: Follow[] = [];
  const tables = tablesOf(workbook);
  const pathAt = new Map(workbook.sheets.map(({ name, path }) => [engineSheet(name), path]));
  data.sheets = read.sheets.flatMap((own) => {
    const sheet = byName.get(own.name);
    if (!sheet) return [];
    sheet.name = engineSheet(own.name);
    leaveSizes(sheet);
    const kept = sheetBeside(own, sheet, workbook, tables);
    const printing = printOf(own.xml, own.root, own.name, workbook.names);
    sheets[sheet.id] = kept.beside;
    print[sheet.id] = printing.print;
    const printed = Object.entries(printing.ranges).map(([key, range]) => [sheet.id, key, range] as const);
    follow.push(...kept.follow, ...printed, ...unformatted(own, sheet, data.formats));
    withCells(sheet, own, new Set(unknown));
    return [sheet];
  });
  return {
    book: {
      ...data,
      namedRanges: read.names,
      followed: followedIn(follow, data.sheets),
      structure: { ...noStructure, sheets: Object.fromEntries(data.sheets.map(({ id, name }) => [id, pathAt.get(name) ?? ""])) },
    },
    file: bytes,
    documents: documentsOf(workbook.parts, workbook.path),
    print,
    sheets,
    properties: propertiesOf(workbook.parts),
    looks: failed ? undefined : looksOf(workbook, data),
    lost: failed ? ["its looks, which could not be read: only what is in the cells opens"] : lost(workbook),
    unknown,
  };
}
