import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { Edge, StyleChange } from "../../../shared/xlsx/stylechange";
import { lookChanges, type Pair, same } from "./difference";

type Style = OSpreadsheet.Style;
type Border = OSpreadsheet.Border;

const edge = (one: Border["top"]): Edge | null => (one ? { style: one.style, color: one.color } : null);

/** The change that makes one style of another, in the terms of files. */
function styleChange(was: Style = {}, is: Style = {}): StyleChange {
  const change: { -readonly [K in keyof StyleChange]: StyleChange[K] } = {};
  const other = (key: keyof Style) => !same(was[key], is[key]);
  if (other("bold")) change.bold = is.bold ?? false;
  if (other("italic")) change.italic = is.italic ?? false;
  if (other("strikethrough")) change.strike = is.strikethrough ?? false;
  if (other("underline")) change.underline = is.underline ?? false;
  if (other("fontSize")) change.size = is.fontSize ?? null;
  if (other("textColor")) change.color = is.textColor ?? null;
  if (other("fillColor")) change.fill = is.fillColor ?? null;
  if (other("align")) change.horizontal = is.align ?? null;
  if (other("verticalAlign")) change.vertical = is.verticalAlign ? (is.verticalAlign === "middle" ? "center" : is.verticalAlign) : null;
  if (other("wrapping")) change.wrap = is.wrapping === "wrap";
  if (other("rotation")) change.rotation = is.rotation ? turned(is.rotation) : null;
  return change;
}

/** textRotation: 0 to 90 counts degrees counterclockwise, 91 to 180 clockwise from 90. */
function turned(radians: number): number {
  const degrees = Math.round((-radians * 180) / Math.PI);
  return degrees < 0 ? 90 - degrees : degrees;
}

function borderChange(was: Border = {}, is: Border = {}): StyleChange {
  const edges = (["left", "right", "top", "bottom"] as const).filter((side) => !same(was[side], is[side]));
  return edges.length ? { edges: Object.fromEntries(edges.map((side) => [side, edge(is[side])])) } : {};
}

/** Changes of the styles of a sheet's cells. `spelt` gives a number format as the file spells it. */
export function cellStyleChanges(
  pair: Pair,
  before: WorkbookData,
  now: WorkbookData,
  spelt: (format: string) => string,
): Map<string, StyleChange> {
  const changes = new Map<string, StyleChange>();
  const add = (address: string, change: StyleChange) => {
    if (Object.keys(change).length) changes.set(address, { ...changes.get(address), ...change });
  };
  const { before: old, now: own } = pair;
  for (const [address, [was, is]] of lookChanges<Style>(old?.styles, before.styles, own.styles, now.styles))
    add(address, styleChange(was, is));
  for (const [address, [, is]] of lookChanges<string>(old?.formats, before.formats, own.formats, now.formats))
    add(address, { format: is === undefined ? null : spelt(is) });
  for (const [address, [was, is]] of lookChanges<Border>(old?.borders, before.borders, own.borders, now.borders))
    add(address, borderChange(was, is));
  return changes;
}
