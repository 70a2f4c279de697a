import type { Allowed, Look } from "./book";
import type { Formula } from "./formula";
import { content, formatOf, type Page, type Value } from "./page";
import { type Ref, refTo } from "./place";

export interface Column {
  readonly title: string;
  readonly unit?: string | Formula;
  readonly format?: string;
  /** Typed by the person: a list, a range or a date. */
  readonly input?: Allowed | true;
  /** One formula that spills down the column, or one formula in each row. */
  readonly spills?: (columns: Columns) => Formula;
  readonly each?: (columns: Columns) => Formula;
  /** What each cell that `spills` fills says in built-in syntax, where that has no twin. */
  readonly instead?: (columns: Columns) => (row: number, column: number) => Formula;
  /** Columns that the formula fills beside its own, by their titles. */
  readonly beside?: readonly string[];
  readonly look?: Look;
  readonly hint?: string;
}

export type Columns = Readonly<Record<string, Ref>>;

function putColumn(page: Page, spec: Column, ref: Ref, place: Columns, rows: readonly Partial<Record<string, Value>>[], id: string): void {
  const { title, unit, beside = [], input, spills, each, hint } = spec;
  const format = spec.format ?? formatOf(input, unit);
  if (unit) page.put(ref.row - 2, ref.column, { ...content(unit), look: "unit", format });
  const over = spec.look === "big" || spec.look === "bigWords" ? "bigHeading" : "heading";
  for (const [right, text] of [title, ...beside].entries())
    page.put(ref.row - 1, ref.column + right, { value: text, look: over, ...(right === 0 && { format }) });
  const look = spec.look ?? (input ? "input" : "result");
  for (let row = 0; row < ref.rows; row++) {
    const fills = { rows: ref.rows, columns: 1 + beside.length };
    const made =
      row === 0 && spills
        ? { formula: spills(place), spills: "rows" as const, fills, instead: spec.instead?.(place) }
        : each
          ? { formula: each(place), row }
          : {};
    const allowed = input === true ? undefined : input;
    page.put(ref.row + row, ref.column, { value: rows[row]?.[id], ...made, format, look, allowed, hint });
    for (const right of beside.keys()) page.put(ref.row + row, ref.column + 1 + right, { look: spec.look ?? "words", format });
  }
}

/**
 * A table with units over its headings: columns to type into, an empty column, then the calculated columns.
 * Returns the reference of each column's cells.
 */
export function sheetTable<C extends Record<string, Column>>(
  page: Page,
  columns: C,
  rows: readonly Partial<Record<keyof C, Value>>[],
  { spare = 0, column = 0, name }: { spare?: number; column?: number; name?: string } = {},
): { readonly of: Readonly<Record<keyof C, Ref>> } {
  const header = page.row + 1;
  const length = rows.length + spare;
  const entries = Object.entries(columns);
  const typed = entries.filter(([, spec]) => spec.input);
  const place: Record<string, Ref> = {};
  let next = column;
  for (const [id, { input, beside = [] }] of entries) {
    if (!input && typed.length && next === column + typed.length) next++;
    place[id] = refTo(page.sheet.name, header + 1, next, length);
    next += 1 + beside.length;
  }
  for (const [id, spec] of entries) putColumn(page, spec, place[id], place, rows, id);
  if (name) {
    const at = refTo(page.sheet.name, header, column, length + 1, typed.length);
    page.sheet.tables.push({ name, titles: typed.map(([, { title }]) => title), at });
  }
  page.row = header + 1 + length;
  return { of: place as Record<keyof C, Ref> };
}
