import { type At, type Block, blockOf } from "./address";
import { letters } from "./letters";
import { relationsOf, textOf, type Workbook } from "./parts";
import { sheetWord } from "./sheetname";
import { childOf, childrenOf, read, unescaped } from "./xml";

/** A table of a workbook, as formulas speak of it: `Blanks[thickness]`. */
export interface Table {
  readonly name: string;
  readonly sheet: string;
  readonly block: Block;
  readonly columns: readonly string[];
  readonly headerRows: number;
  readonly totalRows: number;
}

export function tablesOf({ parts, sheets }: Workbook): Table[] {
  return sheets.flatMap((sheet) =>
    relationsOf(parts, sheet.path)
      .filter(({ kind, path }) => kind === "table" && parts.has(path))
      .map(({ path }) => {
        const root = read(textOf(parts, path));
        const { attributes } = root;
        return {
          name: attributes.displayName ?? attributes.name ?? "",
          sheet: sheet.name,
          block: blockOf(attributes.ref ?? "A1"),
          columns: childrenOf(childOf(root, "tableColumns") ?? root, "tableColumn").map((column) =>
            unescaped(column.attributes.name ?? ""),
          ),
          headerRows: Number(attributes.headerRowCount ?? 1),
          totalRows: Number(attributes.totalsRowCount ?? 0),
        };
      }),
  );
}

const same = (a: string, b: string) => a.toLowerCase() === b.toLowerCase();

/** Splits `[[#Headers],[cost]:[price]]` into its items; an apostrophe escapes the next character. */
function itemsOf(bracket: string): { readonly items: string[]; readonly isSpan: boolean } {
  const inner = bracket.slice(1, -1);
  const nested = [...inner.matchAll(/\[((?:[^[\]']|'.)*)\]/g)].map((found) => found[1]);
  const items = (nested.length ? nested : inner ? [inner] : []).map((item) => item.replace(/'(.)/g, "$1").trim());
  return { items, isSpan: /\]\s*:\s*\[/.test(inner) };
}

/** The rows that the special items choose; without one, those between header and totals. */
function rowsOf({ block, headerRows, totalRows }: Table, specials: readonly string[], at: At): [top: number, bottom: number] | undefined {
  const data: [number, number] = [block.top + headerRows, block.bottom - totalRows];
  const parts: Readonly<Record<string, [number, number]>> = {
    "#all": [block.top, block.bottom],
    "#data": data,
    "#headers": [block.top, block.top + headerRows - 1],
    "#totals": [block.bottom - totalRows + 1, block.bottom],
    "#this row": [at.row, at.row],
  };
  const chosen = specials.map((special) => parts[special.toLowerCase()]);
  if (chosen.includes(undefined as never)) return undefined;
  const rows = chosen.length ? chosen : [data];
  const [top, bottom] = [Math.min(...rows.map((row) => row[0])), Math.max(...rows.map((row) => row[1]))];
  return top <= bottom ? [top, bottom] : undefined;
}

/** The cells that a table reference means, in plain addresses; undefined where it cannot be told. */
export function plainReference(
  tables: readonly Table[],
  name: string | undefined,
  bracket: string,
  sheet: string,
  at: At,
): string | undefined {
  const inside = ({ block, sheet: own }: Table) => own === sheet && at.row >= block.top && at.row <= block.bottom;
  const table = tables.find((one) =>
    name ? same(one.name, name) : inside(one) && at.column >= one.block.left && at.column <= one.block.right,
  );
  if (!table) return undefined;
  const { items, isSpan } = itemsOf(bracket);
  const columns = items.filter((item) => !item.startsWith("#")).map((item) => table.columns.findIndex((column) => same(column, item)));
  const rows = rowsOf(
    table,
    items.filter((item) => item.startsWith("#")),
    at,
  );
  if (!rows || columns.includes(-1) || columns.length > 2 || (columns.length === 2 && !isSpan)) return undefined;
  const [left, right] = columns.length ? [columns[0], columns.at(-1)!] : [0, table.columns.length - 1];
  const first = `$${letters(table.block.left + left)}$${rows[0] + 1}`;
  const last = `$${letters(table.block.left + right)}$${rows[1] + 1}`;
  const place = table.sheet === sheet ? "" : sheetWord(table.sheet);
  return place + (first === last ? first : `${first}:${last}`);
}
