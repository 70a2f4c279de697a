import type { Block } from "./address";
import type { FileRow } from "./cells";
import { changed } from "./xml";

/** A sheet's part with its rows blanked out, of the same length, so that all offsets stay the same. */
export function rowless(xml: string): string {
  const open = /<((?:\w+:)?)sheetData\s*>/.exec(xml);
  if (!open) return xml;
  const start = open.index + open[0].length;
  const end = xml.indexOf(`</${open[1]}sheetData`, start);
  return end < 0 ? xml : xml.slice(0, start) + " ".repeat(end - start) + xml.slice(end);
}

/** A sheet whose cells stand in some blocks alone, but for those on which formulas of others rest, and its outermost ones. */
export function cellsOnlyIn(xml: string, rows: readonly FileRow[], blocks: readonly Block[]): string {
  const end = ({ cells }: FileRow) => cells.at(-1)?.column ?? -1;
  const outermost = new Set([rows.findLast(({ cells }) => cells.length), rows.reduce((a, b) => (end(b) > end(a) ? b : a), rows[0])]);
  const rests = ({ cells }: FileRow) =>
    cells.some(({ formula }) => formula && formula.kind !== "plain" && (formula.kind !== "shared" || formula.text));
  const isIn = (row: number) => blocks.some(({ top, bottom }) => row >= top && row <= bottom);
  const bare = rows.filter((row) => row.cells.length && !outermost.has(row) && !isIn(row.row) && !rests(row));
  return changed(
    xml,
    bare.map(({ open, end, prefix }) => ({ start: open, end: end - `</${prefix}row>`.length, text: "" })),
  );
}
