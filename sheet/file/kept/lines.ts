import type { Attributes } from "../../../shared/xlsx/retag";
import { perHeight, perWidth, rounded } from "../../linesizes";
import { type Pair, same } from "./difference";
import { columnsTagged, rowsTagged, usualWidth } from "./linetags";

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
  const says = (line: number): Attributes => {
    const [was, is] = [before?.rows?.[line], lines.get(line)];
    const set: Attributes = {};
    if (was?.size !== is?.size)
      Object.assign(set, { ht: is?.size && rounded(is.size * perHeight), customHeight: is?.size ? 1 : undefined });
    if (!isGrouped(line) && (was?.isHidden ?? false) !== (is?.isHidden ?? false)) set.hidden = is?.isHidden ? 1 : undefined;
    return set;
  };
  return rowsTagged(xml, new Map([...lines.keys()].map((line) => [line, says(line)])));
}

/** The same for columns, which a file lists in runs. */
export function withColumns(xml: string, { before, now }: Pair, isStill: boolean): string {
  const isGrouped = groupsIn("COL", isStill, before, now);
  const lines = lineChanges(before?.cols, now.cols, before?.colNumber, isGrouped);
  if (!lines.size) return xml;
  const usual = usualWidth(xml);
  const says = (line: number): Attributes => {
    const [was, is] = [before?.cols?.[line], lines.get(line)];
    const set: Attributes = {};
    if (was?.size !== is?.size && is?.size) Object.assign(set, { width: rounded(is.size * perWidth), customWidth: 1 });
    else if (was?.size !== is?.size) Object.assign(set, { width: usual, customWidth: undefined });
    if (!isGrouped(line) && (was?.isHidden ?? false) !== (is?.isHidden ?? false)) set.hidden = is?.isHidden ? 1 : undefined;
    return set;
  };
  return columnsTagged(xml, new Map([...lines.keys()].map((line) => [line, says(line)])));
}
