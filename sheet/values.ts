import type { XmlElement } from "@rgrove/parse-xml";
import { isFault, type Outcome } from "../shared/outcome";
import { addressOf, atOf } from "./address";
import type { FileCell, FileRow } from "./cells";
import { type Change, changed, childOf, escaped, openingOf } from "./xml";

/** The part of a sheet that values are written into. */
export interface Written {
  readonly xml: string;
  readonly root: XmlElement;
  readonly rows: readonly FileRow[];
}

interface Form {
  /** The type that a cell's start tag names; none for a number. */
  readonly type: string | undefined;
  readonly text: string | undefined;
}

function formOf(value: Outcome | undefined): Form {
  if (value === undefined) return { type: undefined, text: undefined };
  if (isFault(value)) return { type: "e", text: value.error };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  return typeof value === "number" ? { type: undefined, text: String(value) } : { type: "str", text: escaped(value) };
}

/** Whether a cell shows this already: then it stays as it is, however its number is spelt. */
function shows({ type, value }: FileCell, form: Form): boolean {
  if (form.text === undefined) return value === undefined;
  if (value === undefined || (type === "n" ? undefined : type) !== form.type) return false;
  return form.type === undefined
    ? Number(value) === Number(form.text)
    : form.type === "str"
      ? escaped(value) === form.text
      : value === form.text;
}

const typeAttribute = /\s+t\s*=\s*(?:"[^"]*"|'[^']*')/;
/** Tells what kind of error or rich value the old value was. */
const detail = /\s+vm\s*=\s*(?:"[^"]*"|'[^']*')/;

const valueElement = (prefix: string, text: string | undefined) => (text === undefined ? "" : `<${prefix}v>${text}</${prefix}v>`);

/** Changes that make one cell show a value: its type, and what stands between its tags in place of the old value. */
function cellChanges(xml: string, { element }: FileCell, { type, text }: Form): Change[] {
  const prefix = element.name.slice(0, -1);
  const opening = openingOf(xml, element);
  const tag = xml.slice(element.start, opening.end).replace(typeAttribute, "").replace(detail, "");
  const typed = type ? tag.replace(/\s*\/?>$/, (end) => ` t="${type}"${end}`) : tag;
  const value = valueElement(prefix, text);
  if (opening.closed) {
    const whole = value ? `${typed.replace(/\s*\/>$/, ">")}${value}</${element.name}>` : typed;
    return [{ start: element.start, end: element.end, text: whole }];
  }
  const old = childOf(element, "v") ?? childOf(element, "is");
  const after = childOf(element, "f")?.end ?? opening.end;
  const place = old ? { start: old.start, end: old.end } : { start: after, end: after };
  return [
    { start: element.start, end: opening.end, text: typed },
    { ...place, text: value },
  ];
}

const newCell = (prefix: string, address: string, { type, text }: Form): string =>
  `<${prefix}c r="${address}"${type ? ` t="${type}"` : ""}>${valueElement(prefix, text)}</${prefix}c>`;

/** New cells of one row, each in front of the first that stands to the right of it. */
function insertions(xml: string, row: FileRow, addresses: readonly string[], forms: ReadonlyMap<string, Form>): Change[] {
  const { element, cells } = row;
  const prefix = element.name.slice(0, -3);
  const opening = openingOf(xml, element);
  if (opening.closed) {
    const tag = xml.slice(element.start, opening.end).replace(/\s*\/>$/, ">");
    const inner = addresses.map((address) => newCell(prefix, address, forms.get(address)!)).join("");
    return [{ start: element.start, end: element.end, text: `${tag}${inner}</${element.name}>` }];
  }
  const byPlace = new Map<number, string>();
  for (const address of addresses) {
    const { column } = atOf(address);
    const next = cells.find((cell) => cell.column > column);
    const place = next ? next.element.start : (cells.at(-1)?.element.end ?? opening.end);
    byPlace.set(place, (byPlace.get(place) ?? "") + newCell(prefix, address, forms.get(address)!));
  }
  return [...byPlace].map(([place, text]) => ({ start: place, end: place, text }));
}

/** Rows that the sheet does not have yet, each in front of the first that stands below it. */
function newRows(
  { xml, root, rows }: Written,
  missing: ReadonlyMap<number, readonly string[]>,
  forms: ReadonlyMap<string, Form>,
): Change[] {
  const data = childOf(root, "sheetData")!;
  const prefix = data.name.slice(0, -"sheetData".length);
  const byPlace = new Map<number, string>();
  for (const [row, addresses] of missing) {
    const cells = addresses.map((address) => newCell(prefix, address, forms.get(address)!)).join("");
    const place = rows.find((one) => one.row > row)?.element.start ?? rows.at(-1)?.element.end ?? openingOf(xml, data).end;
    byPlace.set(place, `${byPlace.get(place) ?? ""}<${prefix}row r="${row + 1}">${cells}</${prefix}row>`);
  }
  return [...byPlace].map(([place, text]) => ({ start: place, end: place, text }));
}

/** A sheet with new values in some of its cells; all else stays character for character. */
export function valuesWritten(sheet: Written, values: ReadonlyMap<string, Outcome | undefined>): string {
  const forms = new Map([...values].map(([address, value]) => [address, formOf(value)]));
  const changes: Change[] = [];
  const missing = new Map(forms);
  for (const row of sheet.rows)
    for (const cell of row.cells) {
      const form = forms.get(addressOf(cell));
      missing.delete(addressOf(cell));
      if (form && !shows(cell, form)) changes.push(...cellChanges(sheet.xml, cell, form));
    }
  const byRow = new Map<number, string[]>();
  const inOrder = [...missing].filter(([, { text }]) => text !== undefined).map(([address]) => address);
  inOrder.sort((a, b) => atOf(a).row - atOf(b).row || atOf(a).column - atOf(b).column);
  for (const address of inOrder) {
    const { row } = atOf(address);
    byRow.set(row, [...(byRow.get(row) ?? []), address]);
  }
  for (const row of sheet.rows) {
    const addresses = byRow.get(row.row);
    if (!addresses) continue;
    changes.push(...insertions(sheet.xml, row, addresses, forms));
    byRow.delete(row.row);
  }
  changes.push(...newRows(sheet, byRow, forms));
  return changed(sheet.xml, changes);
}
