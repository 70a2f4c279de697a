import type { Model } from "@odoo/o-spreadsheet";
import { type Block, blockOf } from "../../../shared/xlsx/address";
import { type FileRow, rowsOf } from "../../../shared/xlsx/cells";
import { flawOf, NotWhole, sameBytes } from "../../../shared/xlsx/integrity";
import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { agreeHeaders } from "../../../shared/xlsx/moved/tableheaders";
import { rangeKey } from "../../../shared/xlsx/names";
import { edit } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { engineSheet } from "../../../shared/xlsx/sheetname";
import { orderSheets, renameSheets } from "../../../shared/xlsx/sheets/order";
import { sharedStringsOf } from "../../../shared/xlsx/strings";
import { agreeTotals } from "../../../shared/xlsx/tabletotals";
import { type Parts, unzip } from "../../../shared/xlsx/unzip";
import { read } from "../../../shared/xlsx/xml";
import { zipped } from "../../../shared/xlsx/zip";
import type { Beside } from "../beside/beside";
import type { Open } from "./baseline";
import { withHidden, withNames } from "./booknames";
import { chain } from "./chain";
import { type Compared, compared } from "./compared";
import { withDocuments } from "./documents";
import { withMerged } from "./reach";
import { type Replayed, replayed } from "./replayed";
import { type Engine, writeSheets } from "./sheetparts";
import { mergesIn } from "./sheetview";
import { reachIn, type Structure, structureIn } from "./structure";
import { withTables } from "./tables";

export type { Engine } from "./sheetparts";

/** The workbook on the page, written into the file that it came from: what was not changed is byte for byte as it came. */
export async function written(
  model: Model,
  { file, documents, looks }: Beside & { readonly file: Uint8Array },
  engine: Engine,
  open: Open,
): Promise<Uint8Array> {
  const structure = structureIn(model);
  const came = unzip(file);
  const made = replayed(came, structure);
  const { book, paths } = made;
  const { parts } = book;
  const { getters } = model;
  // Before anything is compared: what only says the new name is no other formula.
  renameAll(made, getters);
  const reach = reachOf(made, structure, getters);
  const order = () =>
    orderSheets(
      book,
      getters.getSheetIds().flatMap((id) => paths.get(id) ?? []),
    );
  if (!reach.size) {
    order();
    withDocuments(parts, book.path, documents);
    return finished(parts, came, file);
  }
  const shared = stringsOf(book);
  const known = new Map<string, readonly FileRow[]>();
  const rowsAt = (path: string) => {
    if (!known.has(path)) known.set(path, rowsOf(textOf(parts, path), shared));
    return known.get(path)!;
  };
  const found = compared(model, engine, { replayed: made, reach, rowsAt, open, isMoved: structure.steps.length > 0 });
  const removed = await writeSheets(model, engine, { replayed: made, structure, found, rowsAt, looks });
  writeTables(made, found, structure, shared);
  const hidden = hiddenIn(made, found);
  order();
  edit(parts, book.path, (xml) => withHidden(withNames(xml, found.before.namedRanges, found.now.namedRanges), hidden));
  withDocuments(parts, book.path, documents);
  chain(book, structure, removed);
  return finished(parts, came, file);
}

type Getters = Model["getters"];

function renameAll({ book, paths }: Replayed, getters: Getters): void {
  const nameAt = new Map(book.sheets.map(({ path, name }) => [path, name]));
  const renames = [...paths].map(([id, path]) => [path, getters.getSheetName(id)] as const);
  const others = renames.filter(([path, name]) => engineSheet(nameAt.get(path)!) !== name);
  if (others.length) renameSheets(book, new Map(others));
}

/** How far the page must be compared with the file, merged cells counted as one. */
function reachOf({ book, paths }: Replayed, structure: Structure, getters: Getters): Map<string, readonly Block[] | undefined> {
  const mergedOn = (id: string) => [...mergesIn(textOf(book.parts, paths.get(id) ?? "")).map(blockOf), ...getters.getMerges(id)];
  const found = [...reachIn(structure, getters.getSheetIds())];
  return new Map(found.map(([id, blocks]) => [id, blocks && withMerged(blocks, mergedOn(id))]));
}

function stringsOf({ parts, path }: Book): string[] {
  const strings = relationsOf(parts, path).find(({ kind }) => kind === "sharedStrings")?.path;
  return strings && parts.has(strings) ? sharedStringsOf(read(textOf(parts, strings))) : [];
}

/** Tables of the page, and the cells over and under them that must say the same as their parts. */
function writeTables({ book, paths }: Replayed, { pairs, changes, now }: Compared, structure: Structure, shared: readonly string[]): void {
  const isMovedAbout = structure.steps.some((step) => step.do === "block");
  const names = new Set(Object.keys(now.namedRanges ?? {}).map(rangeKey));
  for (const [id, own] of changes) {
    const path = paths.get(id)!;
    const other = new Set(own);
    if (withTables(book, path, pairs.get(id)!, names)) agreeHeaders(book, path, stringsOf(book), () => false);
    else if (other.size || isMovedAbout) {
      agreeHeaders(book, path, shared, (address) => !isMovedAbout && !other.has(address));
      agreeTotals(book.parts, path, shared, (address) => other.has(address));
    }
  }
}

/** Sheets that were hidden or shown, by the relations of their parts. */
function hiddenIn({ book, paths }: Replayed, { pairs }: Compared): Map<string, boolean> {
  const ids = new Map(relationsOf(book.parts, book.path).map(({ path, id }) => [path, id]));
  const others = [...pairs].filter(([, { before, now }]) => (before?.isVisible ?? true) !== now.isVisible);
  return new Map(others.flatMap(([id, { now }]) => [[ids.get(paths.get(id)!) ?? "", !now.isVisible] as const]).filter(([id]) => id));
}

/** The parts as a file, read again before it is given; where nothing was changed, the file is the file. */
function finished(parts: Parts, came: Parts, file: Uint8Array): Uint8Array {
  if (parts.size === came.size && [...parts].every(([path, bytes]) => sameBytes(bytes, came.get(path)))) return file;
  const made = zipped(parts);
  const flaw = flawOf(made, came);
  if (flaw) throw new NotWhole(flaw);
  return made;
}
