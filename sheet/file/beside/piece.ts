import type { Model, WorkbookData } from "@odoo/o-spreadsheet";
import { edit } from "../../../shared/xlsx/package";
import type { Workbook } from "../../../shared/xlsx/parts";
import type { Table } from "../../../shared/xlsx/tables";
import type { Parts } from "../../../shared/xlsx/unzip";
import type { Contents, Read } from "../contents/contents";
import type { Ranges } from "./followed";

/** A feature of files that the engine does not hold, or holds in another form. All pieces have this one shape. */

export type SheetData = WorkbookData["sheets"][number];

/** What is kept of each sheet, by the engine's ids of sheets, which stay when a person gives a sheet another name. */
export type BySheet<K> = Readonly<Record<string, K>>;

/** A sheet of a file that is opened: what the file says of it, and what the engine made of that. */
export interface SheetRead {
  readonly own: Contents;
  readonly sheet: SheetData;
}

/** A file that is opened. */
export interface FileRead {
  readonly workbook: Workbook;
  readonly data: WorkbookData;
  readonly tables: readonly Table[];
  /** The engine's ids of sheets by their names. */
  readonly ids: ReadonlyMap<string, string>;
  readonly sheets: readonly SheetRead[];
  /** The engine could not read the styles of its cells. */
  readonly isPlain: boolean;
  /** Tells a range that moves and goes with its cells from now on, under a key. */
  readonly follow: (sheetId: string, key: string, range: string) => void;
}

/** A sheet of a file that is made anew. */
export interface SheetMade {
  readonly sheet: SheetData;
  readonly path: string;
  /** Where the ranges that were followed are now. */
  readonly here: Ranges;
}

/** A file that is made anew from the engine's own. */
export interface FileMade {
  readonly parts: Parts;
  readonly path: string;
  readonly model: Model;
  readonly data: WorkbookData;
  readonly sheets: readonly SheetMade[];
}

/** Sheets of a file that join a workbook. */
export interface Joining {
  /** Of sheets, and of figures: the old ids and the new. */
  readonly ids: ReadonlyMap<string, string>;
  readonly figures: ReadonlyMap<string, string>;
  /** The workbook's data with the sheets in it. */
  readonly book: WorkbookData;
}

/** What a file can hold that the page does not keep, in words, and whether this one holds it. */
export type Loss = readonly [words: string, test: (workbook: Workbook, read: Read) => boolean];

export interface Piece<K = unknown> {
  /** Under which it stands beside a workbook. */
  readonly name: string;
  /** The part of a sheet, without its rows, as the engine's reader takes it; `names` are the workbook's ranges. */
  readable?(xml: string, names: Readonly<Record<string, string>>): string;
  /** What a file says of it; makes the engine's data more like that. */
  read?(file: FileRead): K;
  /** Writes it into a file made anew. In the file that was opened it stays where it is, and shared/xlsx/moved moves it. */
  write?(file: FileMade, kept: K | undefined): void;
  /** What stands beside a workbook once sheets of a file have joined it; else only its own does. */
  joined?(own: K | undefined, from: K, joining: Joining): K;
  readonly lost?: readonly Loss[];
}

/** What is kept by ids, by the ids that came in their place; the rest stays behind. */
export const rekeyed = <T>(kept: Readonly<Record<string, T>>, ids: ReadonlyMap<string, string>): Record<string, T> =>
  Object.fromEntries(Object.entries(kept).flatMap(([id, one]) => (ids.has(id) ? [[ids.get(id), one] as const] : [])));

interface OfSheet<K> extends Pick<Piece, "name" | "lost" | "readable"> {
  read(sheet: SheetRead, file: FileRead): K;
  /** The part of a sheet with it. */
  write?(xml: string, sheet: SheetMade, kept: K | undefined, file: FileMade): string;
  joined?(joining: Joining, own: BySheet<K>): (kept: K) => K;
}

/** A piece that each sheet has of its own. */
export const bySheet = <K>({ read, write, joined, ...piece }: OfSheet<K>): Piece<BySheet<K>> => ({
  ...piece,
  read: (file) => Object.fromEntries(file.sheets.map((one) => [one.sheet.id, read(one, file)])),
  write: (file, kept) => {
    if (write) for (const one of file.sheets) edit(file.parts, one.path, (xml) => write(xml, one, kept?.[one.sheet.id], file));
  },
  joined: (own = {}, from, joining) => {
    const change = joined?.(joining, own) ?? ((one: K) => one);
    return { ...own, ...Object.fromEntries(Object.entries(rekeyed(from, joining.ids)).map(([id, one]) => [id, change(one)])) };
  },
});
