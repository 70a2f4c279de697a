import { type Block, blockOf } from "../address";
import { rowsOf } from "../cells";
import { withEdits } from "../edits";
import { type Move, movedBlock, sheetName } from "../move";
import { put } from "../package";
import { relationsOf, textOf } from "../parts";
import { type StoredValue, storedOf } from "../storedvalue";
import { dropTable } from "../tableparts";
import { encoded, read } from "../xml";
import { movedDrawing, movedNotes, movedShapes, movedSources } from "./anchors";
import type { Book } from "./bookparts";
import { speakOf } from "./columns";
import { movedRange } from "./ranges";
import { movedSheet } from "./sheet";
import { movedNames, movedPivot, movedPivotSource, movedTable } from "./tables";

type Piece = (xml: string, own: string, move: Move) => string;

/** How a move changes the parts that a sheet refers to, by kind of relationship. */
const ofSheets: Readonly<Record<string, Piece>> = {
  drawing: movedDrawing,
  vmlDrawing: movedShapes,
  comments: (xml, own, move) => movedNotes(xml, own, move, movedRange),
  threadedComment: (xml, own, move) => movedNotes(xml, own, move, movedRange),
  pivotTable: movedPivot,
  ctrlProp: (xml, _, move) => movedSources(xml, move),
};

/** The same for parts that any part may refer to. */
const ofAll: Readonly<Record<string, Piece>> = {
  chart: (xml, _, move) => movedSources(xml, move),
  chartEx: (xml, _, move) => movedSources(xml, move),
  pivotCacheDefinition: (xml, _, move) => movedPivotSource(xml, move),
};

/** Applies a move to every part of a workbook; returns by sheet the cells whose formulas refer to other cells now. */
export function moved(book: Book, move: Move): ReadonlyMap<string, readonly string[]> {
  const { parts } = book;
  const resized = new Map<string, readonly string[]>();
  const change = (path: string, piece: (xml: string) => string) => {
    const xml = textOf(parts, path);
    const now = piece(xml);
    if (now !== xml) parts.set(path, encoded(now));
  };
  const headers = new Map<string, ReadonlyMap<string, string>>();
  const spoken: (() => void)[] = [];
  for (const { name, path } of book.sheets) {
    if (move.kind === "gone" && sheetName(move.sheet) === sheetName(name)) continue;
    change(path, (xml) => {
      const made = movedSheet(xml, name, move);
      if (made.resized.length) resized.set(path, made.resized);
      return made.xml;
    });
    for (const { kind, path: part } of relationsOf(parts, path)) {
      if (!parts.has(part)) continue;
      const piece = ofSheets[kind];
      if (piece) change(part, (xml) => piece(xml, name, move));
      if (kind !== "table") continue;
      const xml = textOf(parts, part);
      const { displayName: table = "", ref = "A1" } = read(xml).attributes;
      const made = movedTable(xml, name, move, (row) => isFree(textOf(parts, path), row));
      if (made.headers.size) headers.set(path, new Map([...(headers.get(path) ?? []), ...made.headers]));
      if (made.xml === undefined) {
        dropTable(parts, path, part);
        spoken.push(() => speakOf(book, { table, columns: undefined }));
      } else if (made.xml !== xml) put(parts, part, made.xml);
      const columns = new Map(made.gone.map((column) => [column.toLowerCase(), undefined]));
      const block = movedBlock(blockOf(ref), move);
      if (made.xml !== undefined && columns.size && block) spoken.push(() => speakOf(book, { table, columns }, { path, block }));
    }
  }
  for (const speak of spoken) speak();
  for (const [path, added] of headers)
    change(path, (xml) => withEdits(xml, new Map([...added].map(([address, name]) => [address, { stored: inline(name) }]))));
  const done = new Set<string>();
  for (const from of [...parts.keys()])
    for (const { kind, path } of relationsOf(parts, from)) {
      const piece = ofAll[kind];
      if (!piece || done.has(path) || !parts.has(path)) continue;
      done.add(path);
      change(path, (xml) => piece(xml, "", move));
    }
  change(book.path, (xml) => movedNames(xml, move));
  return resized;
}

/** Whether no cell of a row of cells holds anything. */
const isFree = (xml: string, { top, left, right }: Block): boolean =>
  rowsOf(xml, []).every(
    ({ row, cells }) =>
      row !== top || cells.every(({ column, value, formula }) => column < left || column > right || (value === undefined && !formula)),
  );

const inline = (text: string): StoredValue => ({ ...storedOf(text), type: "inlineStr" });
