import type { WorkbookData } from "@odoo/o-spreadsheet";
import { blockOf } from "../../../shared/xlsx/address";
import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { speakOf } from "../../../shared/xlsx/moved/columns";
import { resizedTable } from "../../../shared/xlsx/moved/tables";
import { put } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { addTable, dropTable, type TableLook } from "../../../shared/xlsx/tableparts";
import { plainReference, tablesOf } from "../../../shared/xlsx/tables";
import { read } from "../../../shared/xlsx/xml";
import type { Pair } from "./difference";

type Table = WorkbookData["sheets"][number]["tables"][number];

const lookOf = ({ config }: Table): TableLook => ({
  headers: Math.min(1, config?.numberOfHeaders ?? 1),
  totals: config?.totalRow ? 1 : 0,
  filter: config?.hasFilters ?? false,
  style: config?.styleId,
  rowStripes: config?.bandedRows ?? true,
  columnStripes: config?.bandedColumns ?? false,
  firstColumn: config?.firstColumn ?? false,
  lastColumn: config?.lastColumn ?? false,
});

const start = (range: string) => range.split(":")[0];

/** Tables that the page made, took away or gave another size; true where there was one. Where a table goes, formulas speak of its cells. */
export function withTables(book: Book, path: string, { before, now }: Pair, names: ReadonlySet<string>): boolean {
  const { parts } = book;
  const [old, own] = [before?.tables ?? [], now.tables ?? []];
  const gone = old.filter(({ range }) => !own.some((one) => one.range === range));
  const came = own.filter(({ range }) => !old.some((one) => one.range === range));
  const partAt = (range: string) =>
    relationsOf(parts, path).find(
      (one) => one.kind === "table" && parts.has(one.path) && read(textOf(parts, one.path)).attributes.ref === range,
    )?.path;
  let any = false;
  for (const { range } of gone) {
    const part = partAt(range);
    if (!part) continue;
    const next = came.find((one) => start(one.range) === start(range));
    if (next) {
      came.splice(came.indexOf(next), 1);
      const made = resizedTable(textOf(parts, part), blockOf(next.range));
      if (!made) continue;
      put(parts, part, made.xml);
      const { displayName: table = "" } = read(made.xml).attributes;
      const columns = new Map(made.gone.map((name) => [name.toLowerCase(), undefined]));
      if (columns.size) speakOf(book, { table, columns }, { path, block: blockOf(range) });
    } else {
      const { displayName: table = "" } = read(textOf(parts, part)).attributes;
      const tables = tablesOf({ parts, path: book.path, sheets: book.sheets, names: [] });
      const plain = (reference: string, { sheet, row, column }: { sheet: string; row: number; column: number }) => {
        const cut = reference.indexOf("[");
        return plainReference(tables, reference.slice(0, cut) || undefined, reference.slice(cut), sheet, { row, column });
      };
      speakOf(book, { table, columns: undefined, plain }, { path, block: blockOf(range) });
      dropTable(parts, path, part);
    }
    any = true;
  }
  for (const table of came) {
    addTable(parts, path, blockOf(table.range), lookOf(table), names);
    any = true;
  }
  return any;
}
