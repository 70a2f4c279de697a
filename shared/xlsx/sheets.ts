import { type Move, sheetName } from "./move";
import { movedSources } from "./moved/anchors";
import { moved } from "./moved/book";
import type { Book } from "./moved/bookparts";
import { speakOf, speakOfIn } from "./moved/columns";
import { movedNames } from "./moved/tables";
import { declare, declareRelations, edit, put, relate, undeclare, unrelate } from "./package";
import { relationIn, relationsOf, relationsPath, textOf } from "./parts";
import { retagged } from "./retag";
import { noted, scan, type Tag } from "./scan";
import type { Parts } from "./unzip";
import { type Change, changed, escaped, read } from "./xml";

/** Sheets put into a workbook file and taken out of it. */

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const worksheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";

/** A sheet as the workbook's part lists it; chart sheets are among them. */
interface Listed extends Tag {
  readonly id: string;
  readonly end: number;
}

function listed(xml: string): Listed[] {
  const found: Listed[] = [];
  scan(xml, {
    close(tag, end) {
      if (tag.local !== "sheet") return;
      const id = relationIn(xml.slice(tag.start, tag.open));
      found.push(noted(tag, { id, end }));
    },
  });
  return found;
}

const typeOf = (parts: Parts, path: string): string | undefined =>
  [...textOf(parts, "[Content_Types].xml").matchAll(/<(?:\w+:)?Override\b[^>]*>/g)]
    .map(([tag]) => tag)
    .find((tag) => tag.includes(`PartName="/${path}"`))
    ?.match(/ContentType="([^"]*)"/)?.[1];

function freePath(parts: Parts, path: string): string {
  const [, start, , end] = /^(.*?)(\d*)(\.\w+)$/.exec(path)!;
  let number = 1;
  while (parts.has(`${start}${number}${end}`)) number++;
  return `${start}${number}${end}`;
}

/** Lists a part as the workbook's last sheet. */
function listSheet(book: Book, name: string, path: string): void {
  const { parts } = book;
  const folder = book.path.replace(/[^/]*$/, "");
  const id = relate(parts, book.path, "worksheet", path.startsWith(folder) ? path.slice(folder.length) : `/${path}`);
  edit(parts, book.path, (xml) => {
    const sheets = listed(xml);
    const number = Math.max(0, ...sheets.map((tag) => Number(tag.attribute("sheetId")))) + 1;
    const last = sheets.at(-1)!;
    const own =
      /\sxmlns:(\w+)\s*=\s*"http:\/\/(?:schemas\.openxmlformats\.org\/officeDocument\/2006|purl\.oclc\.org\/ooxml\/officeDocument)\/relationships"/.exec(
        xml,
      )?.[1];
    const prefix = own ?? "r";
    const namespace = own ? "" : ' xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';
    const text = `<${last.name} name="${escaped(name)}" sheetId="${number}" ${prefix}:id="${id}"${namespace}/>`;
    return changed(xml, [{ start: last.end, end: last.end, text }]);
  });
  book.sheets = [...book.sheets, { name, path }];
}

export function addSheet(book: Book, name: string): string {
  const path = freePath(book.parts, book.sheets[0].path);
  const uri =
    /\sxmlns(?::\w+)?\s*=\s*"(http:\/\/purl\.oclc\.org\/ooxml\/spreadsheetml\/main)"/.exec(textOf(book.parts, book.path))?.[1] ?? main;
  put(book.parts, path, `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${uri}"><sheetData/></worksheet>`);
  declare(book.parts, path, worksheetType);
  listSheet(book, name, path);
  return path;
}

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
  const all = [...parts.keys()].filter((part) => /tables\/[^/]+\.xml$/.test(part)).map((part) => textOf(parts, part));
  const says = (xml: string, name: string) => new RegExp(`<(?:\\w+:)?table\\b[^>]*?\\s${name}="([^"]*)"`).exec(xml)?.[1] ?? "";
  const taken = new Set(all.map((xml) => says(xml, "displayName").toLowerCase()));
  let number = Math.max(0, ...all.map((xml) => Number(says(xml, "id"))));
  const named = new Map<string, string>();
  for (const { kind, path: table } of relationsOf(parts, path)) {
    if (kind !== "table") continue;
    edit(parts, table, (xml) => {
      let free = says(xml, "displayName");
      for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${says(xml, "displayName")}_${n}`;
      taken.add(free.toLowerCase());
      number++;
      named.set(says(xml, "displayName"), free);
      return xml.replace(
        /<(?:\w+:)?table\b[^>]*>/,
        (tag) => retagged(tag, { start: 0, open: tag.length }, { id: number, name: free, displayName: free }).text,
      );
    });
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
  // No two sheets are the one in sight, and a copy speaks of itself where the first did.
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

function placeOf({ parts, path: workbook }: Book, path: string): number {
  const id = relationsOf(parts, workbook).find((one) => one.path === path)?.id;
  return listed(textOf(parts, workbook)).findIndex((one) => one.id === id);
}

/** Names of one sheet each, and the sheet in sight, told by new places; undefined takes a name away. */
function withPlaces(xml: string, placed: (place: number) => number | undefined): string {
  return xml
    .replace(/<((?:\w+:)?)definedName\b[^>]*>[^<]*<\/\1definedName>/g, (whole) => {
      const own = /\slocalSheetId="(\d+)"/.exec(whole)?.[1];
      if (own === undefined) return whole;
      const place = placed(Number(own));
      return place === undefined ? "" : whole.replace(/\slocalSheetId="\d+"/, ` localSheetId="${place}"`);
    })
    .replace(/<((?:\w+:)?)definedNames>\s*<\/\1definedNames>/, "")
    .replace(/<(?:\w+:)?workbookView\b[^>]*>/g, (tag) =>
      tag.replace(/\s(activeTab|firstSheet)="(\d+)"/g, (_, name, place) => ` ${name}="${placed(Number(place)) ?? 0}"`),
    );
}

/** Parts that can be reached from the package. */
function reached(parts: Parts): Set<string> {
  const found = new Set<string>([""]);
  const waiting = [""];
  for (let from = waiting.pop(); from !== undefined; from = waiting.pop())
    for (const { path, outside } of relationsOf(parts, from))
      if (!outside && parts.has(path) && !found.has(path)) {
        found.add(path);
        waiting.push(path);
      }
  return found;
}

export function removeSheet(book: Book, path: string): ReadonlyMap<string, readonly string[]> {
  const { parts } = book;
  const gone = book.sheets.find((one) => one.path === path)!;
  const place = placeOf(book, path);
  const before = reached(parts);
  for (const { kind, path: table } of relationsOf(parts, path))
    if (kind === "table" && parts.has(table))
      speakOf(book, { table: read(textOf(parts, table)).attributes.displayName ?? "", columns: undefined });
  const resized = moved(book, { kind: "gone", sheet: gone.name });
  const { id } = relationsOf(parts, book.path).find((one) => one.path === path)!;
  edit(parts, book.path, (xml) => {
    const own = listed(xml)[place];
    return withPlaces(changed(xml, [{ start: own.start, end: own.end, text: "" }]), (one) =>
      one === place ? undefined : one > place ? one - 1 : one,
    );
  });
  unrelate(parts, book.path, id);
  const after = reached(parts);
  const dropped = [...before].filter((one) => one && !after.has(one));
  for (const one of dropped) {
    parts.delete(one);
    parts.delete(relationsPath(one));
  }
  undeclare(parts, new Set(dropped.flatMap((one) => [one, relationsPath(one)])));
  book.sheets = book.sheets.filter((one) => one.path !== path);
  return resized;
}

/** Puts sheets in an order; those that are not named, such as chart sheets, stay where they are. */
export function orderSheets(book: Book, paths: readonly string[]): void {
  const ids = new Map(relationsOf(book.parts, book.path).map(({ id, path }) => [path, id]));
  edit(book.parts, book.path, (xml) => {
    const sheets = listed(xml);
    const wanted = paths.map((path) => sheets.findIndex(({ id }) => id === ids.get(path))).filter((place) => place >= 0);
    const slots = [...wanted].sort((a, b) => a - b);
    if (slots.every((slot, i) => slot === wanted[i])) return xml;
    const order = sheets.map((_, place) => place);
    slots.forEach((slot, i) => {
      order[slot] = wanted[i];
    });
    const changes: Change[] = sheets.map(({ start, end }, i) => {
      const from = sheets[order[i]];
      return { start, end, text: xml.slice(from.start, from.end) };
    });
    return withPlaces(changed(xml, changes), (place) => order.indexOf(place));
  });
  book.sheets = paths.flatMap((path) => book.sheets.find((one) => one.path === path) ?? []);
}

/** Gives sheets other names, and says so wherever they are spoken of. */
export function renameSheets(book: Book, names: ReadonlyMap<string, string>): void {
  const map = new Map([...names].map(([path, name]) => [sheetName(book.sheets.find((one) => one.path === path)!.name), name]));
  moved(book, { kind: "names", sheets: map });
  const ids = new Map(relationsOf(book.parts, book.path).map(({ id, path }) => [id, path]));
  edit(book.parts, book.path, (xml) =>
    changed(
      xml,
      listed(xml).flatMap((tag) => {
        const name = names.get(ids.get(tag.id) ?? "");
        return name === undefined ? [] : [retagged(xml, tag, { name })];
      }),
    ),
  );
  book.sheets = book.sheets.map((one) => ({ ...one, name: names.get(one.path) ?? one.name }));
}
