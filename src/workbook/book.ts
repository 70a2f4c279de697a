import type { Formula } from "./formula";
import type { Ref } from "./place";

/** What a cell is for; its fonts and colors are defined in looks.ts. */
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
  /** The row of the table that the formula refers to. */
  readonly row?: number;
  /** The formula spills below and to the right; "rows" if each row of the answer belongs to its own row of arguments. */
  readonly spills?: "rows" | "block";
  /** The cells that such a formula may fill, and the formula of each in built-in syntax where the function has no twin. */
  readonly fills?: { readonly rows: number; readonly columns: number };
  readonly instead?: (row: number, column: number) => Formula;
  /** Words in place of the formula without the add-in; true: the value as last calculated. */
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
  /** The first of stacked bars may be left invisible, so that the next one floats. */
  readonly series: readonly { readonly name: string; readonly values: Ref; readonly color: string }[];
  readonly at: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
  readonly axes: readonly [across: string, up: string];
  /** Values that are moments of a week: the format that tells them, and where the week begins. */
  readonly moments?: { readonly format: string; readonly from: number };
  /** Position of the legend: beside a chart that is too narrow for one line of it. */
  readonly legend?: "bottom" | "right";
  /** Alternative text for a screen reader. */
  readonly alt: string;
}

/** A picture whose content never changes. */
export interface Picture {
  /** Its file in assets. */
  readonly file: string;
  readonly at: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
  /** Alternative text for a screen reader. */
  readonly alt: string;
}

/** An Excel table: a block of input with its headings. */
export interface Table {
  readonly name: string;
  readonly titles: readonly string[];
  readonly at: Ref;
}

export interface Print {
  readonly landscape?: boolean;
  /** Pages high; left out: as many as the rows need. Where it is given, programs ignore page breaks. */
  readonly pages?: number;
  readonly titleRow?: number;
  /** Number of printed columns; those after them only feed charts and formulas. */
  readonly columns?: number;
  /** A table too wide for one page goes over two: so many columns are on the first, with all words; the others beside so many of the first again. */
  readonly two?: { readonly first: number; readonly repeated: number };
  /** The row that begins another page, whatever is above it: programs that fit a sheet to its page pass over breaks. */
  readonly newPage?: number;
  /** Narrow side margins, for a table that is a little too wide for one page. */
  readonly narrow?: boolean;
  /** Font size of the footer in points: on a page that is scaled down the footer shrinks too. */
  readonly footer?: number;
  /** Number of printed rows; left out: all. */
  readonly rows?: number;
  /** A block printed at 100 %, as labels must be, with the margins of the paper in inches. */
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
  /** Columns from this one on are hidden: intermediate values. */
  hidden?: number;
  frozen?: { rows: number; columns: number };
  /** Rows grouped and collapsed under the row above. */
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
