import type { WorkbookData } from "@odoo/o-spreadsheet";
import { rangeOf } from "../../shared/xlsx/address";
import type { FileRow } from "../../shared/xlsx/cells";
import { relationsOf, textOf, type Workbook } from "../../shared/xlsx/parts";
import { childOf, childrenOf, read } from "../../shared/xlsx/xml";
import type { FileColumns } from "./headers";

/** A style of the file: the ids of its number format and border; its own index serves as the id of font and fill. */
export interface FileStyle {
  readonly format: number;
  readonly border: number;
}

export function fileStyles({ parts, path }: Workbook): FileStyle[] {
  const styles = relationsOf(parts, path).find(({ kind }) => kind === "styles")?.path;
  if (!styles || !parts.has(styles)) return [];
  let root: ReturnType<typeof read>;
  try {
    root = read(textOf(parts, styles));
  } catch {
    // Without styles in the file the engine has none either.
    return [];
  }
  return childrenOf(childOf(root, "cellXfs") ?? root, "xf").map(({ attributes: { numFmtId, borderId } }) => ({
    format: Number(numFmtId ?? 0),
    border: Number(borderId ?? 0),
  }));
}

type Pools = Pick<WorkbookData, "styles" | "formats" | "borders">;
type Looks = Pick<WorkbookData["sheets"][number], "styles" | "formats" | "borders">;

interface Run {
  readonly look: number;
  readonly top: number;
  bottom: number;
}

/** Most blank cells that are given the style of their column: more of them would slow the sheet down. */
const mostBlank = 100_000;

/** The styles of a sheet's cells in vertical runs; cells without one keep the style of their row or column. */
export function cellStyles(
  rows: readonly FileRow[],
  columns: readonly FileColumns[],
  size: { readonly rows: number; readonly columns: number },
  looks: readonly FileStyle[],
  pools: Pools,
): Looks {
  const found: Looks = { styles: {}, formats: {}, borders: {} };
  const put = (look: number, top: number, left: number, bottom: number, right: number): void => {
    const own = looks[look];
    if (!own) return;
    const range = rangeOf({ top, left, bottom, right }).replace(/^(.*):\1$/, "$1");
    // The engine counts from one.
    if (pools.styles[look + 1]) found.styles[range] = look + 1;
    if (pools.formats[own.format + 1]) found.formats[range] = own.format + 1;
    if (pools.borders[own.border + 1]) found.borders[range] = own.border + 1;
  };
  const styled = columns.filter(({ look, first }) => look && first < size.columns);
  const wide = styled.reduce((sum, { first, last }) => sum + Math.min(last, size.columns - 1) - first + 1, 0);
  if (wide * size.rows <= mostBlank)
    for (const { look, first, last } of styled) put(look, 0, first, size.rows - 1, Math.min(last, size.columns - 1));
  const tall = rows.filter(({ look, row }) => look && row < size.rows);
  if (tall.length * size.columns <= mostBlank) for (const { look, row } of tall) put(look, row, 0, row, size.columns - 1);
  const open = new Map<number, Run>();
  const close = (column: number, { look, top, bottom }: Run) => put(look, top, column, bottom, column);
  for (const { cells } of rows)
    for (const { row, column, look } of cells) {
      if (row >= size.rows || column >= size.columns) continue;
      const run = open.get(column);
      if (run && run.look === look && run.bottom + 1 === row) run.bottom = row;
      else {
        if (run) close(column, run);
        if (look) open.set(column, { look, top: row, bottom: row });
        else open.delete(column);
      }
    }
  for (const [column, run] of open) close(column, run);
  return found;
}
