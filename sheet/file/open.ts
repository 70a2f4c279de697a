import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { type Workbook, workbookOf } from "../../shared/xlsx/parts";
import { tablesOf } from "../../shared/xlsx/tables";
import { unzip } from "../../shared/xlsx/unzip";
import { version } from "../enginedata";
import { quietly } from "../quietly";
import type { Beside } from "./beside/beside";
import { readBeside } from "./beside/pieces";
import type { Places } from "./beside/ruleplaces";
import { fileStyles } from "./cellstyles";
import { completeSheet } from "./completesheet";
import { contents, type Read } from "./contents/contents";
import { askedOnce } from "./contents/pattern";
import { aroundOf, type Reader, unknownOf } from "./formulas/known";
import { noStructure } from "./kept/structure";
import { lost } from "./lost";
import { partsFor } from "./readable";

/** A workbook from disk as the page takes it. */
export interface Opened extends Beside {
  readonly book: object;
  /** What the page does not keep of it, in words. */
  readonly lost: readonly string[];
  /** Cells whose formulas the page does not know; they show an error and are saved as they came. */
  readonly unknown: readonly string[];
  /** Where in their parts its rules stand, by the engine's ids of sheets. */
  readonly places: Readonly<Record<string, Places>>;
}

export type Engine = Pick<typeof OSpreadsheet, "load" | "helpers"> & Reader;

type SheetData = WorkbookData["sheets"][number];

/** Cells without styles: for a file whose styles the engine cannot read. */
const plainData = (ids: ReadonlyMap<string, string>): WorkbookData =>
  ({ version, sheets: [...ids.values()].map((id) => ({ id, name: id, cells: {} })), styles: {}, formats: {}, borders: {} }) as never;

interface Looked {
  readonly data: WorkbookData;
  readonly failed: boolean;
}

function looks(workbook: Workbook, read: Read, ids: ReadonlyMap<string, string>, { load }: Engine): Looked {
  const loaded = (charts?: boolean) => quietly(() => load(partsFor(workbook, read, ids, charts)));
  try {
    return { data: loaded(), failed: false };
  } catch {
    // Tried again without charts: one that the engine cannot read must not hide the rest.
    return { data: loaded(false), failed: false };
  }
}

function looksOrNone(workbook: Workbook, read: Read, ids: ReadonlyMap<string, string>, engine: Engine): Looked {
  try {
    return looks(workbook, read, ids, engine);
  } catch {
    return { data: plainData(ids), failed: true };
  }
}

function unknownCells(read: Read, engine: Engine): string[] {
  const around = aroundOf(read);
  const isUnknown = askedOnce((formula) => unknownOf(formula, engine, around) !== undefined);
  return read.sheets.flatMap(({ name, formulas }) =>
    formulas.filter(({ text, kind }) => kind !== "other" && isUnknown(text)).map(({ address }) => `${name}!${address}`),
  );
}

/** How far a file is read, from 0 to 1. */
export type Progress = (share: number) => void;

/** Reads a workbook file for the page; throws Unreadable with the reason. */
export const opened = (bytes: Uint8Array, engine: Engine, progress?: Progress): Opened => ({
  ...openedParts(workbookOf(unzip(bytes)), engine, progress),
  file: bytes,
});

/** The same from its parts. */
export function openedParts(workbook: Workbook, engine: Engine, progress: Progress = () => {}): Opened {
  progress(0.1);
  const read = contents(workbook, (share) => progress(0.1 + 0.6 * share));
  const unknown = unknownCells(read, engine);
  progress(0.8);
  const ids = new Map(read.sheets.map(({ name }, i) => [name, `sheet${i + 1}`]));
  const { data, failed } = looksOrNone(workbook, read, ids, engine);
  progress(0.9);
  const byId = new Map(data.sheets.map((sheet) => [sheet.id, sheet]));
  const shared = { workbook, data, ids, fileStyles: fileStyles(workbook), unknown: new Set(unknown) };
  const followed: Record<string, Record<string, string>> = Object.fromEntries(data.sheets.map(({ id }) => [id, {}]));
  const follow = (sheetId: string, key: string, range: string) => {
    if (followed[sheetId]) followed[sheetId][key] = range;
  };
  const sheets = read.sheets.map((own) => {
    const id = ids.get(own.name)!;
    const sheet = byId.get(id) ?? ({ id, name: id, cells: {} } as SheetData);
    return { own, sheet, places: completeSheet(own, sheet, shared, follow) };
  });
  data.sheets = sheets.map(({ sheet }) => sheet);
  const beside = readBeside({ workbook, data, tables: tablesOf(workbook), ids, sheets, isPlain: failed, follow });
  const structure = { ...noStructure, reached: {}, sheets: Object.fromEntries(sheets.map(({ own, sheet }) => [sheet.id, own.part.path])) };
  return {
    ...beside,
    book: { ...data, namedRanges: read.names, followed, structure },
    lost: failed ? ["its formatting, which could not be read: only what is in the cells opens"] : lost(workbook, read),
    unknown,
    places: Object.fromEntries(sheets.map(({ sheet, places }) => [sheet.id, places])),
  };
}
