import { isFault } from "../../shared/outcome";
import type { Sheet } from "./book";
import { measure, styleOf } from "./looks";
import { key, ofKey } from "./place";
import type { Shown } from "./shown";

/** Height in points of a line of 11-point text; and characters for each unit of column width, a low estimate for wide fonts. */
const usual = 15;
const perWidth = 1.02;
const { size } = measure;

/** Lines that words take in a column so many characters wide. */
export function linesOf(text: string, width: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    const needed = used ? used + 1 + word.length : word.length;
    if (needed <= width || !used) used = needed;
    else {
      lines++;
      used = word.length;
    }
    lines += Math.max(0, Math.ceil(used / width) - 1);
    if (used > width) used %= width;
  }
  return lines;
}

const heightOf = (lines: number, line: number, points: number): number =>
  Math.ceil((lines * line * points) / size) + (lines > 1 || points > size ? 2 : 0);

/** Row heights for wrapped words: programs do not fit merged cells, and some fit no rows at all. */
export function heightsOf(sheet: Sheet, cells: ReadonlyMap<string, Shown>): Map<number, number> {
  const merged = new Map(sheet.merges.map((ref) => [key(ref.row, ref.column), ref.columns]));
  const { line = usual } = sheet;
  const heights = new Map<number, number>();
  if (line !== usual) for (const at of sheet.cells.keys()) heights.set(ofKey(at)[0], line);
  for (const [row, lines] of sheet.room) heights.set(row, heightOf(lines, line, size));
  for (const [at, { cell, value, refused }] of cells) {
    const [row, column] = ofKey(at);
    const text = isFault(value) ? "" : value;
    const style = styleOf(refused ? "refused" : cell.look, cell.format);
    const points = style.font?.size ?? size;
    const wraps = style.alignment?.wrapText && typeof text === "string";
    const width = sheet.widths.slice(column, column + (merged.get(at) ?? 1)).reduce((a, b) => a + b, 0);
    const lines = wraps && text ? linesOf(text, ((width - 1) * perWidth * size) / points) : 1;
    const height = heightOf(lines, line, points);
    if (height > (heights.get(row) ?? line)) heights.set(row, height);
  }
  for (const [row, height] of sheet.heights) heights.set(row, height);
  return heights;
}
