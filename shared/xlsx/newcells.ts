import type { XmlElement } from "@rgrove/parse-xml";
import { atOf } from "./address";
import type { FileRow } from "./cells";
import { type Form, valueElement } from "./form";
import { type Change, childOf, openingOf } from "./xml";

/** The part of a sheet that values are written into. */
export interface Written {
  readonly xml: string;
  readonly root: XmlElement;
  readonly rows: readonly FileRow[];
}

const newCell = (prefix: string, address: string, { type, text }: Form): string =>
  `<${prefix}c r="${address}"${type ? ` t="${type}"` : ""}>${valueElement(prefix, text)}</${prefix}c>`;

/** New cells of one row, each in front of the first that stands to the right of it. */
export function insertions(xml: string, row: FileRow, addresses: readonly string[], forms: ReadonlyMap<string, Form>): Change[] {
  const { prefix, start, open, end, closed, cells } = row;
  if (closed) {
    const tag = xml.slice(start, open).replace(/\s*\/>$/, ">");
    const inner = addresses.map((address) => newCell(prefix, address, forms.get(address)!)).join("");
    return [{ start, end, text: `${tag}${inner}</${prefix}row>` }];
  }
  const byPlace = new Map<number, string>();
  for (const address of addresses) {
    const { column } = atOf(address);
    const next = cells.find((cell) => cell.column > column);
    const place = next ? next.start : (cells.at(-1)?.end ?? open);
    byPlace.set(place, (byPlace.get(place) ?? "") + newCell(prefix, address, forms.get(address)!));
  }
  return [...byPlace].map(([place, text]) => ({ start: place, end: place, text }));
}

/** Rows that the sheet does not have yet, each in front of the first that stands below it. */
export function newRows(
  { xml, root, rows }: Written,
  missing: ReadonlyMap<number, readonly string[]>,
  forms: ReadonlyMap<string, Form>,
): Change[] {
  const data = childOf(root, "sheetData")!;
  const prefix = data.name.slice(0, -"sheetData".length);
  const byPlace = new Map<number, string>();
  for (const [row, addresses] of missing) {
    const cells = addresses.map((address) => newCell(prefix, address, forms.get(address)!)).join("");
    const place = rows.find((one) => one.row > row)?.start ?? rows.at(-1)?.end ?? openingOf(xml, data).end;
    byPlace.set(place, `${byPlace.get(place) ?? ""}<${prefix}row r="${row + 1}">${cells}</${prefix}row>`);
  }
  return [...byPlace].map(([place, text]) => ({ start: place, end: place, text }));
}
