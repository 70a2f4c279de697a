import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { XmlElement } from "@rgrove/parse-xml";
import type { FileRow } from "../../shared/xlsx/cells";
import { childOf, childrenOf, isTrue } from "../../shared/xlsx/xml";
import { perHeight, perWidth, rounded, usual } from "../linesizes";

/** Rows and columns of a sheet: how large they are, which are hidden, which stand in groups. */

type SheetData = WorkbookData["sheets"][number];
type Headers = SheetData["rows"];
type Group = NonNullable<SheetData["headerGroups"]>["ROW"][number];

const fromWidth = (width: number): number => rounded(width / perWidth);
const fromHeight = (height: number): number => rounded(height / perHeight);

interface Header {
  readonly size?: number;
  readonly hidden: boolean;
  readonly level: number;
  /** Whether the group that ends beside it is folded. */
  readonly folds: boolean;
}

/** A group for each run of rows that stand at least so deep. */
function groupsOf(count: number, at: (index: number) => Header | undefined, isAfter: boolean): Group[] {
  const groups: Group[] = [];
  const open: number[] = [];
  for (let i = 0; i <= count; i++) {
    const level = i < count ? Math.min(at(i)?.level ?? 0, 8) : 0;
    while (open.length > level) {
      const start = open.pop()!;
      const same = groups.some((group) => group.start === start && group.end === i - 1);
      if (!same) groups.push({ start, end: i - 1, isFolded: at(isAfter ? i : start - 1)?.folds ?? false });
    }
    while (open.length < level) open.push(i);
  }
  return groups.sort((a, b) => a.start - b.start || b.end - a.end);
}

function headersOf(count: number, at: (index: number) => Header | undefined, usualSize: number, groups: readonly Group[]): Headers {
  const headers: Headers = {};
  const folded = groups.filter(({ isFolded }) => isFolded);
  for (let i = 0; i < count; i++) {
    const own = at(i);
    const isHidden = own?.hidden && !folded.some(({ start, end }) => i >= start && i <= end);
    headers[i] = { size: own?.size ?? usualSize, ...(isHidden ? { isHidden } : {}) };
  }
  return headers;
}

const numberOf = (text: string | undefined): number | undefined => (Number(text) > 0 ? Number(text) : undefined);

/** Columns as the file tells them: several beside each other at once. */
export interface FileColumns {
  readonly first: number;
  readonly last: number;
  readonly look: number;
  readonly header: Header;
}

export const columnsOf = (root: XmlElement): FileColumns[] =>
  childrenOf(childOf(root, "cols") ?? root, "col").map(({ attributes: { min, max, width, hidden, outlineLevel, collapsed, style } }) => ({
    first: Number(min) - 1,
    last: Number(max ?? min) - 1,
    look: Number(style ?? 0),
    header: {
      size: numberOf(width) && fromWidth(Number(width)),
      hidden: isTrue(hidden),
      level: Number(outlineLevel ?? 0),
      folds: isTrue(collapsed),
    },
  }));

/** What a sheet of so many rows and columns has to say of them. */
export function headers(
  root: XmlElement,
  rows: readonly FileRow[],
  columns: readonly FileColumns[],
  size: { readonly rows: number; readonly columns: number },
): Pick<SheetData, "rows" | "cols" | "headerGroups"> {
  const format = childOf(root, "sheetFormatPr")?.attributes;
  const outline = childOf(childOf(root, "sheetPr") ?? root, "outlinePr")?.attributes;
  const isAfter = (says: string | undefined) => says === undefined || isTrue(says);
  const byRow = new Map(
    rows.map(({ row, height, hidden, level, folds }) => [row, { size: height ? fromHeight(height) : undefined, hidden, level, folds }]),
  );
  const row = (index: number) => byRow.get(index);
  const column = (index: number) => columns.find(({ first, last }) => index >= first && index <= last)?.header;
  const ROW = groupsOf(size.rows, row, isAfter(outline?.summaryBelow));
  const COL = groupsOf(size.columns, column, isAfter(outline?.summaryRight));
  return {
    rows: headersOf(size.rows, row, fromHeight(numberOf(format?.defaultRowHeight) ?? usual.height), ROW),
    cols: headersOf(size.columns, column, fromWidth(numberOf(format?.defaultColWidth) ?? usual.width), COL),
    headerGroups: { ROW, COL },
  };
}
