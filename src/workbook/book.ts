import type { Formula } from "./formula";
import type { Ref } from "./place";

/** What a cell is for; how that looks stands in one place: looks. */
export type Look =
  | "title"
  | "lead"
  | "bar"
  | "heading"
  | "label"
  | "unit"
  | "note"
  | "caution"
  | "link"
  | "button"
  | "step"
  | "bars"
  | "input"
  | "result"
  | "refused"
  | "words"
  | "alarm"
  | "strong"
  | "total"
  | "figure"
  | "frozen"
  | "tick"
  | "item"
  | "itemNote"
  | "big"
  | "bigWords"
  | "bigNote"
  | "bigHeading"
  | "bigCaution"
  | "labelHead"
  | "labelLine";

/** What may be typed into an input cell. */
export type Allowed =
  | { readonly list: readonly string[] | Ref; readonly only?: true }
  | { readonly from: number; readonly to: number; readonly whole?: boolean }
  | { readonly date: true };

export interface Cell {
  readonly value?: string | number | boolean;
  readonly formula?: Formula;
  /** The row of its table that the formula speaks of. */
  readonly row?: number;
  /** The formula fills cells below and to the right; "rows" if each of them answers its own row. */
  readonly spills?: "rows" | "block";
  /** The cells that a formula of rows may fill, and what each of them says in built-in syntax where the question has no twin. */
  readonly fills?: { readonly rows: number; readonly columns: number };
  readonly instead?: (row: number, column: number) => Formula;
  /** Words that stand in place of the formula where there are no functions; true: the value of the day. */
  readonly without?: string | true;
  readonly look?: Look;
  readonly format?: string;
  readonly allowed?: Allowed;
  readonly hint?: string;
  /** The name of a sheet to go to. */
  readonly to?: string;
}

/** Marks cells of a block where a formula over its first row is true. */
export interface Alert {
  readonly over: Ref;
  readonly when: Formula;
  readonly as: "bad" | "attention" | "good" | "unseen";
}

export interface Chart {
  readonly title: string;
  readonly kind: "line" | "bar" | "scatter";
  readonly across: Ref;
  /** The first of stacked bars may be left white: what then seems to float starts where it ends. */
  readonly series: readonly { readonly name: string; readonly values: Ref; readonly color: string }[];
  readonly at: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
  readonly axes: readonly [across: string, up: string];
  /** Values that are moments of a week: the format that tells them, and where the week begins. */
  readonly moments?: { readonly format: string; readonly from: number };
  /** Where the names of the series stand: beside a chart that is too narrow for them on one line. */
  readonly legend?: "bottom" | "right";
  /** Told to a person who cannot see it. */
  readonly alt: string;
}

/** A drawing that tells nothing which changes. */
export interface Picture {
  /** Its file in assets. */
  readonly file: string;
  readonly at: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
  /** Told to a person who cannot see it. */
  readonly alt: string;
}

/** A block of input with its headings, that programs sort and extend as one. */
export interface Table {
  readonly name: string;
  readonly titles: readonly string[];
  readonly at: Ref;
}

export interface Print {
  readonly landscape?: boolean;
  /** As many pages as it takes where this is left out: a table grows. Where it is given, programs pass over breaks. */
  readonly pages?: number;
  readonly titleRow?: number;
  /** Columns from the first on that go to paper; the rest serve charts. */
  readonly columns?: number;
  /** A table too wide for one page goes over two: so many columns are on the first, with all words; the others beside so many of the first again. */
  readonly two?: { readonly first: number; readonly repeated: number };
  /** The row that begins another page, whatever is above it: programs that fit a sheet to its page pass over breaks. */
  readonly newPage?: number;
  /** A table that is a little too wide for one page takes from the margins at the sides. */
  readonly narrow?: boolean;
  /** Points of the line at the foot of a page that is shrunk: it shrinks along. */
  readonly footer?: number;
  /** Rows from the first on that go to paper; all where this is left out. */
  readonly rows?: number;
  /** A block that goes to paper in its own size, as labels must: with the margins of its sheet of paper, in inches. */
  readonly exact?: { readonly area: Ref; readonly margins: { readonly top: number; readonly left: number } };
}

export interface Sheet {
  readonly name: string;
  /** One line on what the sheet is for, told to screen readers too. */
  readonly purpose: string;
  readonly widths: readonly number[];
  readonly cells: Map<string, Cell>;
  readonly merges: Ref[];
  readonly tables: Table[];
  readonly alerts: Alert[];
  readonly charts: Chart[];
  readonly breaks: number[];
  /** Points that a line is high, where it is not the usual. */
  line?: number;
  /** Points that rows are high whatever is in them. */
  readonly heights: Map<number, number>;
  /** From this column on none is shown: what other cells are worked out from. */
  hidden?: number;
  frozen?: { rows: number; columns: number };
  /** Rows that are folded away under the row above them, until somebody opens them. */
  readonly folds: { readonly first: number; readonly last: number }[];
  readonly pictures: Picture[];
  /** The cell that is selected when the sheet is first shown; else the first that is typed into. */
  cursor?: Ref;
  print: Print;
}

export interface Book {
  readonly title: string;
  readonly sheets: readonly Sheet[];
  readonly names: readonly { readonly name: string; readonly ref: Ref }[];
}
