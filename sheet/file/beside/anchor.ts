import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { XmlElement } from "@rgrove/parse-xml";
import { childOf } from "../../../shared/xlsx/xml";

/** Where a chart stands: files say from which cell to which, the engine says how large it is. */

type SheetData = WorkbookData["sheets"][number];
type Figure = SheetData["figures"][number];

/** The size of a column or a row, in points of the screen. */
export interface Measure {
  readonly column: (index: number) => number;
  readonly row: (index: number) => number;
}

const perPoint = 914400 / 96;

/** The size of a chart that a file anchors at two cells, as the engine's rounded columns and rows make it. */
export function spanned(anchor: XmlElement, { cols, rows }: SheetData): { width?: number; height?: number } {
  const [from, to] = ["from", "to"].map((name) => childOf(anchor, name));
  if (!from || !to) return {};
  const at = (end: XmlElement, name: string) => Number(childOf(end, name)?.text ?? 0);
  const span = (index: string, offset: string, sizes: Readonly<Record<number, { size?: number } | undefined>>) => {
    let sum = (at(to, offset) - at(from, offset)) / perPoint;
    for (let i = at(from, index); i < at(to, index); i++) sum += Math.round(sizes[i]?.size ?? 0);
    return sum;
  };
  return { width: span("col", "colOff", cols), height: span("row", "rowOff", rows) };
}

/** Differences below this, in pixels, are rounding. */
const slack = 1.5;

function walk(start: number, length: number, size: (index: number) => number): readonly [index: number, offset: number] {
  let index = start;
  let left = length;
  for (let own = size(index); own && left >= own - slack; own = size(++index)) left -= own;
  return [index, left < slack ? 0 : Math.round(left * perPoint)];
}

/** The cells at its corners, for a file. The engine counts from the point before the first. */
export function place({ col, row, offset, width, height }: Figure, { column, row: rowSize }: Measure): { from: string; to: string } {
  const x = offset.x + 1;
  const y = offset.y + 1;
  const corner = (right: number, down: number) => {
    const [toColumn, columnOffset] = walk(col, right, column);
    const [toRow, rowOffset] = walk(row, down, rowSize);
    return `<xdr:col>${toColumn}</xdr:col><xdr:colOff>${columnOffset}</xdr:colOff><xdr:row>${toRow}</xdr:row><xdr:rowOff>${rowOffset}</xdr:rowOff>`;
  };
  return { from: corner(x, y), to: corner(x + width, y + height) };
}
