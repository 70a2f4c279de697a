import type { WorkbookData } from "@odoo/o-spreadsheet";
import { rangeOf } from "../../../shared/xlsx/address";
import type { Workbook } from "../../../shared/xlsx/parts";
import type { Table } from "../../../shared/xlsx/tables";
import { childOf, childrenOf } from "../../../shared/xlsx/xml";
import type { Contents } from "../contents/contents";
import { chartsOf, type KeptCharts } from "./charts";
import { type KeptLink, linksOf } from "./links";
import { type KeptNote, notesOf } from "./notes";
import { pivotsOf } from "./pivots";
import { type Sizes, sizesOf } from "./sizes";
import { type KeptTable, tableNames } from "./tables";
import { type KeptValidations, validationsOf } from "./validations";

type SheetData = WorkbookData["sheets"][number];

/** What one sheet holds beside what the engine keeps. */
export interface SheetBeside {
  readonly sizes: Sizes;
  readonly validations: KeptValidations;
  readonly charts: KeptCharts;
  readonly notes: readonly KeptNote[];
  readonly links: readonly KeptLink[];
  readonly tables: readonly KeptTable[];
}

/** A range to be followed, of a sheet, by its key. */
export type Follow = readonly [sheetId: string, key: string, range: string];

/** The cell that the file says is selected, under this key. */
export const cursorKey = "cursor";

function cursorOf({ root }: Contents): string | undefined {
  const view = childOf(childOf(root, "sheetViews") ?? root, "sheetView");
  const cells = childrenOf(view ?? root, "selection").flatMap(({ attributes: { activeCell } }) => activeCell ?? []);
  return cells.find((cell) => /^[A-Z]+[1-9]\d*$/.test(cell) && cell !== "A1");
}

/** What a sheet holds beside, and the ranges that say where. */
export function sheetBeside(
  own: Contents,
  sheet: SheetData,
  workbook: Workbook,
  tables: readonly Table[],
  ids: ReadonlyMap<string, string>,
): { readonly beside: SheetBeside; readonly follow: readonly Follow[] } {
  const { links, follow } = linksOf(own.root, sheet.id, ids);
  const { notes, ranges } = notesOf(workbook.parts, own.part.path);
  const mine = tables.filter((table) => table.sheet === own.name);
  const cursor = cursorOf(own);
  const named = tableNames(tables, own.name);
  return {
    beside: {
      sizes: sizesOf(own.xml, own.root, own.rows),
      validations: validationsOf(own.root, sheet),
      charts: chartsOf(workbook, own.part.path, sheet),
      notes,
      links,
      tables: named,
    },
    follow: [
      ...follow,
      ...Object.entries(ranges).map(([key, range]) => [sheet.id, key, range] as const),
      ...(cursor ? [[sheet.id, cursorKey, cursor] as const] : []),
      ...Object.entries(pivotsOf(workbook.parts, own.part.path)).map(([key, range]) => [sheet.id, key, range] as const),
      ...named.map(({ key }, i) => [sheet.id, key, rangeOf(mine[i].block)] as const),
    ],
  };
}
