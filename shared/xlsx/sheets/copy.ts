import { type Move, sheetName } from "../move";
import { movedSources } from "../moved/anchors";
import type { Book } from "../moved/bookparts";
import { speakOfIn } from "../moved/columns";
import { movedNames } from "../moved/tables";
import { declare, declareRelations, edit, put } from "../package";
import { relationsOf, relationsPath, textOf } from "../parts";
import { rootRetagged } from "../retag";
import type { Parts } from "../unzip";
import { read } from "../xml";
import { freePath, listed, listSheet, placeOf } from "./listed";

const typeOf = (parts: Parts, path: string): string | undefined =>
  [...textOf(parts, "[Content_Types].xml").matchAll(/<(?:\w+:)?Override\b[^>]*>/g)]
    .map(([tag]) => tag)
    .find((tag) => tag.includes(`PartName="/${path}"`))
    ?.match(/ContentType="([^"]*)"/)?.[1];

/** Parts that a copy of a sheet has of its own; others, such as pictures, it shares. */
const owned = new Set([
  "drawing",
  "vmlDrawing",
  "comments",
  "threadedComment",
  "table",
  "chart",
  "chartEx",
  "chartStyle",
  "chartColorStyle",
  "ctrlProp",
]);

function copyPart(parts: Parts, from: string, done: Map<string, string>): string {
  const known = done.get(from);
  if (known) return known;
  const path = freePath(parts, from);
  done.set(from, path);
  parts.set(path, parts.get(from)!);
  const type = typeOf(parts, from);
  if (type) declare(parts, path, type);
  const file = relationsPath(from);
  if (!parts.has(file)) return path;
  const copies = new Map(
    relationsOf(parts, from)
      .filter(({ kind, outside, path: part }) => !outside && owned.has(kind) && parts.has(part))
      .map(({ id, path: part }) => [id, copyPart(parts, part, done)]),
  );
  const xml = textOf(parts, file);
  declareRelations(parts);
  put(
    parts,
    relationsPath(path),
    xml.replace(/<(?:\w+:)?Relationship\s[^>]*>/g, (tag) => {
      const copy = copies.get(/\sId="([^"]*)"/.exec(tag)?.[1] ?? "");
      return copy ? tag.replace(/\sTarget="[^"]*"/, ` Target="/${copy}"`) : tag;
    }),
  );
  return path;
}

/** Tables have names and numbers that hold for a whole workbook. */
function renameTables(parts: Parts, path: string): void {
  const says = (table: string) => read(textOf(parts, table)).attributes;
  const all = [...parts.keys()].filter((part) => /tables\/[^/]+\.xml$/.test(part)).map(says);
  const taken = new Set(all.map(({ displayName = "" }) => displayName.toLowerCase()));
  let number = Math.max(0, ...all.map(({ id }) => Number(id)));
  const named = new Map<string, string>();
  for (const { kind, path: table } of relationsOf(parts, path)) {
    if (kind !== "table") continue;
    const { displayName: own = "" } = says(table);
    let free = own;
    for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${own}_${n}`;
    taken.add(free.toLowerCase());
    number++;
    named.set(own, free);
    edit(parts, table, (xml) => rootRetagged(xml, { id: number, name: free, displayName: free }));
  }
  for (const [table, to] of named) speakOfIn(parts, path, { table, to, columns: new Map() }, undefined);
}

export function copySheet(book: Book, from: string, name: string): string {
  const { parts } = book;
  const own = book.sheets.find(({ path }) => path === from)!;
  const place = placeOf(book, from);
  const copies = new Map<string, string>();
  const path = copyPart(parts, from, copies);
  renameTables(parts, path);
  const names: Move = { kind: "names", sheets: new Map([[sheetName(own.name), name]]) };
  for (const copy of copies.values())
    if (/chart/i.test(copy) && /<(?:\w+:)?chartSpace/.test(textOf(parts, copy))) edit(parts, copy, (xml) => movedSources(xml, names));
  // Only one sheet may be selected, and no two may share an id (xr:uid).
  edit(parts, path, (xml) =>
    xml.replace(/(<(?:\w+:)?sheetView\b[^>]*?)\s+tabSelected="(?:1|true)"/g, "$1").replace(/\s(?:xr:uid)="[^"]*"/, ""),
  );
  listSheet(book, name, path);
  const number = listed(textOf(parts, book.path)).length - 1;
  edit(parts, book.path, (xml) =>
    xml.replace(/<((?:\w+:)?)definedName\b[^>]*\slocalSheetId="(\d+)"[^>]*>[^<]*<\/\1definedName>/g, (whole, _, local) =>
      Number(local) === place ? whole + movedNames(whole.replace(/localSheetId="\d+"/, `localSheetId="${number}"`), names) : whole,
    ),
  );
  return path;
}
