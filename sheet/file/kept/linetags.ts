import { rowsOf } from "../../../shared/xlsx/cells";
import { prefixOf, sheetRoot, withElement } from "../../../shared/xlsx/elements";
import { type Attributes, retagged, tagWith } from "../../../shared/xlsx/retag";
import { type Change, changed, childOf, childrenOf, openingOf } from "../../../shared/xlsx/xml";
import { usual } from "../../linesizes";

/** Rows told something of themselves, those that the file does not have yet among them. */
export function rowsTagged(xml: string, lines: ReadonlyMap<number, Attributes>): string {
  if (!lines.size) return xml;
  const rows = rowsOf(xml, []);
  const there = new Set(rows.map(({ row }) => row));
  const changes: Change[] = rows.flatMap((row) => (lines.has(row.row) ? [retagged(xml, row, lines.get(row.row)!)] : []));
  const data = /<((?:\w+:)?)sheetData\s*(\/?)>/.exec(xml)!;
  const open = data.index + data[0].length;
  const added: { place: number; text: string }[] = [];
  for (const [line, set] of [...lines].filter(([one]) => !there.has(one)).sort(([a], [b]) => a - b)) {
    if (!Object.values(set).some((value) => value !== undefined)) continue;
    const place = rows.find(({ row }) => row > line)?.start ?? rows.at(-1)?.end ?? open;
    added.push({ place, text: tagWith(`<${data[1]}row r="${line + 1}"/>`, set) });
  }
  if (data[2] && added.length) {
    const text = `<${data[1]}sheetData>${added.map((one) => one.text).join("")}</${data[1]}sheetData>`;
    return changed(xml, [{ start: data.index, end: open, text }]);
  }
  const byPlace = new Map<number, string>();
  for (const { place, text } of added) byPlace.set(place, (byPlace.get(place) ?? "") + text);
  return changed(xml, [...changes, ...[...byPlace].map(([place, text]) => ({ start: place, end: place, text }))]);
}

/** Width of columns for which the file states none. */
export const usualWidth = (xml: string): string =>
  childOf(sheetRoot(xml), "sheetFormatPr")?.attributes.defaultColWidth ?? String(usual.width);

/** Columns told something of themselves: a file lists them in runs, which part where one column differs. */
export function columnsTagged(xml: string, lines: ReadonlyMap<number, Attributes>): string {
  if (!lines.size) return xml;
  const root = sheetRoot(xml);
  const prefix = prefixOf(root);
  const element = childOf(root, "cols");
  const runs = (element ? childrenOf(element, "col") : []).map((col) => ({
    min: Number(col.attributes.min) - 1,
    max: Number(col.attributes.max) - 1,
    tag: xml.slice(col.start, openingOf(xml, col).end),
  }));
  for (const [line, set] of lines) {
    const at = runs.findIndex(({ min, max }) => line >= min && line <= max);
    const own = runs[at];
    const tag = own?.tag ?? `<${prefix}col min="1" max="1" width="${usualWidth(xml)}"/>`;
    const one = { min: line, max: line, tag: tagWith(tag, set) };
    if (!own) runs.push(one);
    else {
      const sides = [
        { ...own, max: line - 1 },
        { ...own, min: line + 1 },
      ].filter(({ min, max }) => min <= max);
      runs.splice(at, 1, ...sides, one);
    }
  }
  const text = runs
    .sort((a, b) => a.min - b.min)
    .map(({ min, max, tag }) => tagWith(tag, { min: min + 1, max: max + 1 }))
    .map((tag) => (tag.endsWith("/>") ? tag : `${tag.slice(0, -1)}/>`))
    .join("");
  return withElement(xml, "cols", `<${prefix}cols>${text}</${prefix}cols>`);
}
