import type { Book } from "../moved/bookparts";
import { edit, relate } from "../package";
import { relationIn, relationsOf, textOf } from "../parts";
import { noted, scan, type Tag } from "../scan";
import type { Parts } from "../unzip";
import { changed, escaped } from "../xml";

/** The sheets of a workbook as its own part lists them. */

/** A sheet as the workbook's part lists it; chart sheets are among them. */
interface Listed extends Tag {
  readonly id: string;
  readonly end: number;
}

export function listed(xml: string): Listed[] {
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

export function placeOf({ parts, path: workbook }: Book, path: string): number {
  const id = relationsOf(parts, workbook).find((one) => one.path === path)?.id;
  return listed(textOf(parts, workbook)).findIndex((one) => one.id === id);
}

/** A name like that of a part, with a number that is free. */
export function freePath(parts: Parts, path: string): string {
  const [, start, , end] = /^(.*?)(\d*)(\.\w+)$/.exec(path)!;
  let number = 1;
  while (parts.has(`${start}${number}${end}`)) number++;
  return `${start}${number}${end}`;
}

/** Lists a part as the workbook's last sheet. */
export function listSheet(book: Book, name: string, path: string): void {
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

/** Names of one sheet each, and the sheet in sight, told by new places; undefined takes a name away. */
export function withPlaces(xml: string, placed: (place: number) => number | undefined): string {
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
