import type { Formula, Place, Ref } from "./formula";

/** What a cell is for; looks follow from it, in one place: xlsx. */
export type Look =
  | "title"
  | "lead"
  | "heading"
  | "label"
  | "unit"
  | "note"
  | "caution"
  | "input"
  | "result"
  | "total"
  | "frozen"
  | "tick"
  | "big";

/** What may be typed into an input cell. */
export type Allowed =
  | { readonly list: readonly string[] }
  | { readonly from: number; readonly to: number; readonly whole?: boolean }
  | { readonly date: true };

export interface Cell {
  readonly value?: string | number | boolean;
  readonly formula?: Formula;
  /** A formula that fills cells down and to the right of its own: how far it may. */
  readonly fills?: { readonly rows: number; readonly columns: number };
  /** In the edition without the functions, copied down its column row by row instead of spilling. */
  readonly perRow?: boolean;
  readonly look?: Look;
  readonly format?: string;
  readonly allowed?: Allowed;
  readonly hint?: string;
}

/** Marks cells of a block where a formula over its first cell is true. */
export interface Alert {
  readonly over: Ref;
  readonly when: Formula;
  readonly as: "bad" | "attention" | "good";
}

export interface Chart {
  readonly title: string;
  readonly kind: "line" | "bar" | "scatter";
  readonly across: Ref;
  readonly series: readonly { readonly name: string; readonly values: Ref }[];
  readonly at: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
  readonly axes: readonly [across: string, up: string];
  /** Told to a person who cannot see it. */
  readonly alt: string;
}

export interface Sheet {
  readonly name: string;
  /** One line on what the sheet is for, told to screen readers too. */
  readonly purpose: string;
  readonly cells: Map<string, Cell>;
  readonly widths: readonly number[];
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly alerts: Alert[];
  readonly charts: Chart[];
  readonly print: { readonly landscape?: boolean; readonly onePage?: boolean; readonly titleRow?: number };
  readonly merges: { readonly row: number; readonly column: number; readonly columns: number; readonly rows?: number }[];
}

export interface Book {
  readonly title: string;
  readonly sheets: readonly Sheet[];
  readonly names: readonly { readonly name: string; readonly ref: Ref }[];
}

export const at = (row: number, column: number): string => `${row},${column}`;

/** A reference to a place, or to a block from one place to another. */
export function refTo(sheet: string, row: number, column: number, rows = 1, columns = 1): Ref {
  const place = (r: number, c: number): Place => ({ sheet, row: r, column: c });
  return {
    first: () => place(row, column),
    last: () => place(row + rows - 1, column + columns - 1),
    beside: rows > 1 ? (r) => refTo(sheet, row + r, column) : undefined,
  };
}
