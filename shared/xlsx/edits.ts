import { addressOf, atOf, type Block, rangeOf } from "./address";
import { type FileCell, type FileRow, rowsOf } from "./cells";
import { retagged } from "./retag";
import type { StoredValue } from "./storedvalue";
import { type Change, changed, escaped } from "./xml";

/** A formula to be written into a cell. */
export interface NewFormula {
  readonly formula: string;
  /** The range of an array formula; `mark` (cm) makes it a dynamic one. */
  readonly block?: Block;
  readonly mark?: number;
}

/** A change of a cell; what is left out stays as it is. */
export interface Edit {
  readonly stored?: StoredValue;
  /** `null` takes the formula away. */
  readonly formula?: NewFormula | null;
  readonly look?: number;
  /** No cached value: the formula is calculated by the program that opens the file next. */
  readonly again?: true;
}

export type Edits = ReadonlyMap<string, Edit>;

/** Whether a cell shows this already: then it stays as it is, however its number is spelled. */
export function shows({ type, value, formula }: FileCell, stored: StoredValue): boolean {
  // A cell that an array formula fills may store empty text as a blank; a formula's own cell does not.
  if (!stored.text) return !value && (stored.type === undefined || value === "" || !formula);
  const kindOf = (one: string | undefined) => (one === "s" || one === "inlineStr" ? "str" : one === "n" ? undefined : one);
  const kind = kindOf(stored.type);
  if (value === undefined || kindOf(type) !== kind) return false;
  if (kind === "str") return escaped(value) === stored.text;
  if (kind !== undefined) return value === stored.text;
  // Programs write 15 digits or 17.
  const [a, b] = [Number(value), Number(stored.text)];
  return a === b || Math.abs(a - b) <= 1e-13 * Math.max(Math.abs(a), Math.abs(b));
}

const attribute = (name: string) => new RegExp(`\\s+${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
const [type, look, mark, detail] = ["t", "s", "cm", "vm"].map(attribute);

/** A start tag without its end, one attribute of it set or taken away. */
const withAttribute = (tag: string, name: string, pattern: RegExp, value: string | number | undefined): string =>
  tag.replace(pattern, "") + (value === undefined ? "" : ` ${name}="${value}"`);

function valueXml(prefix: string, { type, text }: StoredValue): string {
  if (text === undefined) return "";
  if (type !== "inlineStr") return `<${prefix}v>${text}</${prefix}v>`;
  const space = /^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : "";
  return `<${prefix}is><${prefix}t${space}>${text}</${prefix}t></${prefix}is>`;
}

function formulaXml(prefix: string, { formula, block }: NewFormula): string {
  const kind = block ? ` t="array" ref="${rangeOf(block).replace(/^(\w+):\1$/, "$1")}"` : "";
  return `<${prefix}f${kind}>${escaped(formula)}</${prefix}f>`;
}

/** A cell with an edit made to it, as text; what it holds beside stays. */
function edited(xml: string, cell: FileCell, { stored, formula, look: number, again }: Edit): string {
  const { prefix, start, open, end, closed, shown } = cell;
  const name = `${prefix}c`;
  let tag = xml.slice(start, open).replace(/\s*\/?>$/, "");
  if (number !== undefined) tag = withAttribute(tag, "s", look, number || undefined);
  if (stored)
    tag = withAttribute(withAttribute(tag, "vm", detail, undefined), "t", type, stored.text === undefined ? undefined : stored.type);
  if (formula !== undefined) tag = withAttribute(tag, "cm", mark, formula?.mark);
  const own =
    formula === undefined ? (cell.formula ? xml.slice(cell.formula.start, cell.formula.end) : "") : formula && formulaXml(prefix, formula);
  const f = own && again ? own.replace(/\s+ca="[^"]*"/, "").replace(/^<[^\s/>]+/, (open) => `${open} ca="1"`) : own;
  const v = stored ? valueXml(prefix, stored) : shown ? xml.slice(shown.start, shown.end) : "";
  const inner = (f ?? "") + v;
  if (closed || !inner || formula !== undefined || again) return inner ? `${tag}>${inner}</${name}>` : `${tag}/>`;
  if (!stored) return `${tag}>${xml.slice(open, end)}`;
  // What else stands in it, in its place.
  const place = shown ?? { start: cell.formula?.end ?? open, end: cell.formula?.end ?? open };
  return `${tag}>${xml.slice(open, place.start)}${v}${xml.slice(place.end, end)}`;
}

/** A cell that is not there yet; "" where it would be blank. */
function made(prefix: string, address: string, { stored, formula, look: number, again }: Edit): string {
  const value = stored ? valueXml(prefix, stored) : "";
  const inner = (formula ? formulaXml(prefix, formula).replace(/^<[^\s/>]+/, (open) => (again ? `${open} ca="1"` : open)) : "") + value;
  const attributes = [
    number ? ` s="${number}"` : "",
    stored?.type && value ? ` t="${stored.type}"` : "",
    formula?.mark !== undefined ? ` cm="${formula.mark}"` : "",
  ].join("");
  if (!inner && !number) return "";
  return `<${prefix}c r="${address}"${attributes}${inner ? `>${inner}</${prefix}c>` : "/>"}`;
}

/** A row with new cells among those that it has. */
function rowChanges(xml: string, row: FileRow, edits: readonly (readonly [column: number, address: string, edit: Edit])[]): Change[] {
  const there = new Map(row.cells.map((cell) => [cell.column, cell]));
  const changes: Change[] = [];
  const byPlace = new Map<number, string>();
  let at = 0;
  for (const [column, address, edit] of edits) {
    const cell = there.get(column);
    if (cell) {
      changes.push({ start: cell.start, end: cell.end, text: edited(xml, cell, edit) });
      continue;
    }
    while (at < row.cells.length && row.cells[at].column < column) at++;
    const place = row.cells[at]?.start ?? row.cells.at(-1)?.end ?? row.open;
    byPlace.set(place, (byPlace.get(place) ?? "") + made(row.prefix, address, edit));
  }
  const added = [...byPlace.values()].join("");
  // The row's `spans` attribute would be wrong now.
  const tag = retagged(xml, row, added ? { spans: undefined } : {});
  if (row.closed) {
    if (added) changes.push({ ...tag, text: `${tag.text.replace(/\s*\/>$/, "")}>${added}</${row.prefix}row>` });
    return changes;
  }
  if (added) changes.push(tag);
  for (const [place, text] of byPlace) changes.push({ start: place, end: place, text });
  return changes;
}

/** Where rows stand that the sheet does not have yet. */
function dataIn(xml: string): { readonly prefix: string; readonly start: number; readonly open: number; readonly closed: boolean } {
  const found = /<((?:\w+:)?)sheetData\s*(\/?)>/.exec(xml)!;
  return { prefix: found[1], start: found.index, open: found.index + found[0].length, closed: found[2] === "/" };
}

/** A sheet with edits made to its cells; all else stays character for character. */
export function withEdits(xml: string, edits: Edits, rows: readonly FileRow[] = rowsOf(xml, [])): string {
  if (!edits.size) return xml;
  const byRow = new Map<number, [number, string, Edit][]>();
  for (const [address, edit] of edits) {
    const { row, column } = atOf(address);
    if (!byRow.has(row)) byRow.set(row, []);
    byRow.get(row)!.push([column, addressOf({ row, column }), edit]);
  }
  for (const one of byRow.values()) one.sort((a, b) => a[0] - b[0]);
  const changes: Change[] = [];
  for (const row of rows) {
    const own = byRow.get(row.row);
    if (own) changes.push(...rowChanges(xml, row, own));
    byRow.delete(row.row);
  }
  const data = dataIn(xml);
  const byPlace = new Map<number, string>();
  let at = 0;
  for (const [row, own] of [...byRow].sort((a, b) => a[0] - b[0])) {
    const cells = own.map(([, address, edit]) => made(data.prefix, address, edit)).join("");
    if (!cells) continue;
    while (at < rows.length && rows[at].row < row) at++;
    const place = rows[at]?.start ?? rows.at(-1)?.end ?? data.open;
    byPlace.set(place, `${byPlace.get(place) ?? ""}<${data.prefix}row r="${row + 1}">${cells}</${data.prefix}row>`);
  }
  if (data.closed && byPlace.size) {
    const text = `<${data.prefix}sheetData>${[...byPlace.values()].join("")}</${data.prefix}sheetData>`;
    changes.push({ start: data.start, end: data.open, text });
  } else for (const [place, text] of byPlace) changes.push({ start: place, end: place, text });
  return changed(xml, changes);
}
