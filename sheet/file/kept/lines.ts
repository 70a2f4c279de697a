import { rowsOf } from "../../../shared/xlsx/cells";
import { retagged } from "../../../shared/xlsx/retag";
import { type Change, changed, childOf, childrenOf, openingOf, read } from "../../../shared/xlsx/xml";
import { type Pair, same } from "./difference";
import { shell, withElement } from "./elements";

/** Points of the screen in the units of files. */
const perWidth = 0.143;
const perHeight = 0.75;
const rounded = (number: number) => Math.round(number * 100) / 100;

type Header = { readonly size?: number; readonly isHidden?: boolean } | undefined;

/** Lines whose size is another, or which are hidden or not any more. What was read beyond the end of the file's is not the file's. */
function lineChanges(
  before: Readonly<Record<number, Header>> = {},
  now: Readonly<Record<number, Header>> = {},
  end: number | undefined,
  isGrouped: (line: number) => boolean,
): Map<number, Header> {
  const lines = [...new Set([...Object.keys(before), ...Object.keys(now)].map(Number))].filter((line) => end === undefined || line < end);
  const said = (one: Header, line: number) => [one?.size, !isGrouped(line) && (one?.isHidden ?? false)];
  return new Map(lines.filter((line) => !same(said(before[line], line), said(now[line], line))).map((line) => [line, now[line]]));
}

const groupsIn = (axis: "ROW" | "COL", isStill: boolean, ...sheets: readonly Pair["before"][]) => {
  const groups = isStill ? [] : sheets.flatMap((sheet) => sheet?.headerGroups?.[axis] ?? []);
  return (line: number) => groups.some(({ start, end }) => line >= start && line <= end);
};

/** The sizes of rows, and which are hidden, written into the rows' own tags. */
export function withRows(xml: string, { before, now }: Pair, isStill: boolean): string {
  const isGrouped = groupsIn("ROW", isStill, before, now);
  const lines = lineChanges(before?.rows, now.rows, before?.rowNumber, isGrouped);
  if (!lines.size) return xml;
  const says = (line: number): Record<string, string | number | undefined> => {
    const [was, is] = [before?.rows?.[line], lines.get(line)];
    const set: Record<string, string | number | undefined> = {};
    if (was?.size !== is?.size)
      Object.assign(set, { ht: is?.size && rounded(is.size * perHeight), customHeight: is?.size ? 1 : undefined });
    if (!isGrouped(line) && (was?.isHidden ?? false) !== (is?.isHidden ?? false)) set.hidden = is?.isHidden ? 1 : undefined;
    return set;
  };
  const rows = rowsOf(xml, []);
  const there = new Set(rows.map(({ row }) => row));
  const changes: Change[] = rows.filter(({ row }) => lines.has(row)).map((row) => retagged(xml, row, says(row.row)));
  const data = /<((?:\w+:)?)sheetData\s*(\/?)>/.exec(xml)!;
  const open = data.index + data[0].length;
  const added: { place: number; text: string }[] = [];
  for (const line of [...lines.keys()].filter((one) => !there.has(one)).sort((a, b) => a - b)) {
    const set = says(line);
    if (!Object.values(set).some((value) => value !== undefined)) continue;
    const tag = `<${data[1]}row r="${line + 1}"/>`;
    const place = rows.find(({ row }) => row > line)?.start ?? rows.at(-1)?.end ?? open;
    added.push({ place, text: retagged(tag, { start: 0, open: tag.length }, set).text });
  }
  if (data[2] && added.length) {
    const text = `<${data[1]}sheetData>${added.map((one) => one.text).join("")}</${data[1]}sheetData>`;
    return changed(xml, [{ start: data.index, end: open, text }]);
  }
  const byPlace = new Map<number, string>();
  for (const { place, text } of added) byPlace.set(place, (byPlace.get(place) ?? "") + text);
  return changed(xml, [...changes, ...[...byPlace].map(([place, text]) => ({ start: place, end: place, text }))]);
}

/** The same for columns, which a file lists in runs. */
export function withColumns(xml: string, { before, now }: Pair, isStill: boolean): string {
  const isGrouped = groupsIn("COL", isStill, before, now);
  const lines = lineChanges(before?.cols, now.cols, before?.colNumber, isGrouped);
  if (!lines.size) return xml;
  const root = read(shell(xml));
  const prefix = root.name.slice(0, -"worksheet".length);
  const element = childOf(root, "cols");
  const runs = (element ? childrenOf(element, "col") : []).map((col) => ({
    min: Number(col.attributes.min) - 1,
    max: Number(col.attributes.max) - 1,
    tag: shell(xml).slice(col.start, openingOf(shell(xml), col).end),
  }));
  const usual = childOf(root, "sheetFormatPr")?.attributes.defaultColWidth ?? "8.43";
  for (const [line, is] of lines) {
    const was = before?.cols?.[line];
    const set: Record<string, string | number | undefined> = {};
    if (was?.size !== is?.size && is?.size) Object.assign(set, { width: rounded(is.size * perWidth), customWidth: 1 });
    else if (was?.size !== is?.size) Object.assign(set, { width: usual, customWidth: undefined });
    if (!isGrouped(line) && (was?.isHidden ?? false) !== (is?.isHidden ?? false)) set.hidden = is?.isHidden ? 1 : undefined;
    const at = runs.findIndex(({ min, max }) => line >= min && line <= max);
    const own = runs[at];
    const bare = `<${prefix}col min="1" max="1" width="${usual}"/>`;
    const tag = own?.tag ?? bare;
    const one = { min: line, max: line, tag: retagged(tag, { start: 0, open: tag.length }, set).text };
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
    .map(({ min, max, tag }) =>
      retagged(tag, { start: 0, open: tag.length }, { min: min + 1, max: max + 1 }).text.replace(/>$/, (end) => end),
    )
    .map((tag) => (tag.endsWith("/>") ? tag : `${tag.slice(0, -1)}/>`))
    .join("");
  return withElement(xml, "cols", `<${prefix}cols>${text}</${prefix}cols>`);
}
