import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { Block } from "../../../shared/xlsx/address";
import type { FileRow } from "../../../shared/xlsx/cells";
import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { textOf, type Workbook, workbookOf } from "../../../shared/xlsx/parts";
import { cellsOnlyIn, rowless } from "../../../shared/xlsx/rowless";
import { encoded } from "../../../shared/xlsx/xml";
import { sharedBookOf } from "../../book";
import { quietly } from "../../quietly";
import type { Places } from "../beside/ruleplaces";
import { cutTo, wider } from "./reach";
import { structureOf } from "./structure";

export type Engine = Pick<typeof OSpreadsheet, "Model">;

/** How a file opens, as far as saving asks: the engine's data, and where the rules stand. */
export type Open = (workbook: Workbook) => { readonly book: object; readonly places: Readonly<Record<string, Places>> };

export interface Baseline {
  /** Sheets that were not changed hold nothing but their names. */
  readonly before: WorkbookData;
  /** Where in their parts the rules stand, by the paths of the parts. */
  readonly places: ReadonlyMap<string, Places>;
}

/**
 * The file as it would open now, as the engine's own data; of each sheet, by the engine's id, as much as can be another on the page:
 * some blocks, or all of it where these are not known.
 */
export function baseline(
  book: Book,
  paths: ReadonlyMap<string, string>,
  reach: ReadonlyMap<string, readonly Block[] | undefined>,
  rowsAt: (path: string) => readonly FileRow[],
  open: Open,
  engine: Engine,
): Baseline {
  const parts = new Map(book.parts);
  for (const [id, path] of paths) {
    const xml = textOf(parts, path);
    const blocks = reach.get(id);
    if (!reach.has(id)) parts.set(path, encoded(rowless(xml)));
    else if (blocks) parts.set(path, encoded(cellsOnlyIn(xml, rowsAt(path), blocks.map(wider))));
  }
  const again = open(workbookOf(parts));
  const idAt = new Map([...paths].map(([id, path]) => [path, id]));
  const pathAt = structureOf(again.book).sheets;
  const idOf = (id: string) => idAt.get(pathAt[id]) ?? id;
  const opened = again.book as WorkbookData;
  const cut = { ...opened, sheets: opened.sheets.map((sheet) => cutTo(sheet, reach.get(idOf(sheet.id))?.map(wider))) };
  const model = quietly(() => new engine.Model(cut, { mode: "export_verification" as never }));
  const data = sharedBookOf(model).book;
  return {
    before: { ...data, sheets: data.sheets.map((sheet) => ({ ...cutTo(sheet, reach.get(idOf(sheet.id))), id: idOf(sheet.id) })) },
    places: new Map(Object.entries(again.places).map(([id, own]) => [pathAt[id], own])),
  };
}
