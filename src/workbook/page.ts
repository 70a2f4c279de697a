import { fractions, plainNumber } from "../../shared/numberformat";
import { plainUnits } from "../../shared/unit";
import type { Alert, Allowed, Cell, Chart, Look, Picture, Print, Sheet } from "./book";
import { asksIn, type Formula, formula } from "./formula";
import { cellIn, key, type Ref, refTo } from "./place";

type Value = string | number | boolean;

export interface Column {
  readonly title: string;
  readonly unit?: string | Formula;
  readonly format?: string;
  /** Typed by the person: a list, a range or a date. */
  readonly input?: Allowed | true;
  /** One formula that fills the column, or one in each row. */
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

export interface Line {
  readonly label: string;
  readonly value?: Value;
  readonly formula?: Formula;
  readonly input?: Allowed | true;
  readonly format?: string;
  readonly unit?: string | Formula;
  readonly note?: string | Formula;
  readonly look?: Look;
}

/** Below the name of the sheet stands what it is for. */
export const leadRow = 1;

const inches = plainUnits("US").length.name;

/** Every cell for a number has a format of its own: programs give theirs to a cell that has none, and read 3/4 as a day there. */
const formatOf = (input: Allowed | true | undefined, unit: string | Formula | undefined): string | undefined =>
  input && input !== true && "from" in input ? (unit === inches ? fractions : plainNumber) : undefined;

const content = (text: string | Formula): Cell => (typeof text === "string" ? { value: text } : { formula: text });

/** Lays one sheet out from top to bottom and hands out references to what it placed. */
export class Page {
  readonly sheet: Sheet;
  row = 0;

  constructor(name: string, purpose: string, widths: readonly number[], print: Print = {}) {
    const none = {
      cells: new Map(),
      merges: [],
      tables: [],
      alerts: [],
      charts: [],
      breaks: [],
      folds: [],
      pictures: [],
      heights: new Map(),
    };
    this.sheet = { name, purpose, widths, print, ...none };
  }

  /** The value of the line to come: its note may speak of it. */
  get next(): Ref {
    return refTo(this.sheet.name, this.row, 1);
  }

  put(row: number, column: number, cell: Cell): Ref {
    this.sheet.cells.set(key(row, column), cell);
    return refTo(this.sheet.name, row, column);
  }

  skip(rows = 1): this {
    this.row += rows;
    return this;
  }

  /** Columns that go to paper. */
  private get columns(): number {
    return this.sheet.print.columns ?? this.sheet.widths.length;
  }

  /** Words across the page, or across what a column leaves of it. */
  say(text: string | Formula, look: Look = "note", first = 0): Ref {
    const ref = this.across(this.row, first, (this.sheet.print.two?.first ?? this.columns) - first, { ...content(text), look });
    this.row++;
    return ref;
  }

  /** One cell that reaches over so many columns. */
  across(row: number, first: number, columns: number, cell: Cell): Ref {
    const ref = this.put(row, first, cell);
    for (let column = first + 1; column < first + columns; column++) this.put(row, column, { look: cell.look });
    if (columns > 1) this.sheet.merges.push(refTo(this.sheet.name, row, first, 1, columns));
    return ref;
  }

  /** The name of the sheet and what it is for. */
  open(title: string, lead = this.sheet.purpose): this {
    this.say(title, "title");
    this.say(lead, "lead");
    return this.skip();
  }

  /** Says in place of what the sheet is for what must be put right before it can be trusted; the first that holds. */
  warn(...warnings: readonly (readonly [when: Formula, words: string | Formula])[]): this {
    const lead = refTo(this.sheet.name, leadRow, 0);
    const purpose = formula`"${this.sheet.purpose}"`;
    const said = (words: string | Formula) => (typeof words === "string" ? formula`"${words}"` : words);
    const made = warnings.reduceRight<Formula>((rest, [when, words]) => formula`IF(${when},${said(words)},${rest})`, purpose);
    this.put(lead.row, lead.column, { formula: made, look: "lead" });
    // A rule that looks at its own cell holds in every program.
    return this.alert("bad", lead, formula`${lead}<>${purpose}`);
  }

  cautions(sentences: readonly string[]): this {
    for (const sentence of sentences) this.say(sentence, "caution");
    return this;
  }

  heading(...titles: readonly string[]): this {
    for (let column = 0; column < this.columns; column++) this.put(this.row, column, { value: titles[column], look: "bar" });
    this.row++;
    return this;
  }

  /** Label, value, unit and a note side by side; answers the value's place. */
  line({ label, note, unit, input, ...cell }: Line): Ref {
    this.put(this.row, 0, { value: label, look: "label" });
    const allowed = input === true ? undefined : input;
    const look = cell.look ?? (input ? "input" : "result");
    const ref = this.put(this.row, 1, { ...cell, format: cell.format ?? formatOf(input, unit), allowed, look });
    this.put(this.row, 2, { ...(unit ? content(unit) : {}), look: "unit" });
    if (note) this.put(this.row, 3, { ...content(note), look: "note" });
    this.row++;
    return ref;
  }

  /**
   * A table with units over its headings: typed columns first, one column's room, then what is worked out of them.
   * Answers a reference for each column.
   */
  table<C extends Record<string, Column>>(
    columns: C,
    rows: readonly Partial<Record<keyof C, Value>>[],
    { spare = 0, column = 0, name }: { spare?: number; column?: number; name?: string } = {},
  ): { readonly of: Readonly<Record<keyof C, Ref>> } {
    const header = this.row + 1;
    const length = rows.length + spare;
    const entries = Object.entries(columns);
    const typed = entries.filter(([, spec]) => spec.input);
    const place: Record<string, Ref> = {};
    let next = column;
    for (const [id, { input, beside = [] }] of entries) {
      if (!input && typed.length && next === column + typed.length) next++;
      place[id] = refTo(this.sheet.name, header + 1, next, length);
      next += 1 + beside.length;
    }
    for (const [id, spec] of entries) this.column(spec, place[id], place, rows, id);
    if (name) {
      const at = refTo(this.sheet.name, header, column, length + 1, typed.length);
      this.sheet.tables.push({ name, titles: typed.map(([, { title }]) => title), at });
    }
    this.row = header + 1 + length;
    return { of: place as Record<keyof C, Ref> };
  }

  private column(spec: Column, ref: Ref, place: Columns, rows: readonly Partial<Record<string, Value>>[], id: string): void {
    const { title, unit, beside = [], input, spills, each, hint } = spec;
    const format = spec.format ?? formatOf(input, unit);
    if (unit) this.put(ref.row - 2, ref.column, { ...content(unit), look: "unit", format });
    const over = spec.look === "big" || spec.look === "bigWords" ? "bigHeading" : "heading";
    for (const [right, text] of [title, ...beside].entries())
      this.put(ref.row - 1, ref.column + right, { value: text, look: over, ...(right === 0 && { format }) });
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
      this.put(ref.row + row, ref.column, { value: rows[row]?.[id], ...made, format, look, allowed, hint });
      for (const right of beside.keys()) this.put(ref.row + row, ref.column + 1 + right, { look: spec.look ?? "words", format });
    }
  }

  /** Room for an answer that fills rows and columns, its first row a heading if it has one. */
  block(made: Formula, at: Ref, formats: readonly (string | undefined)[], { headed = true, look = "result" as Look } = {}): Ref {
    for (let row = 0; row < at.rows; row++)
      for (let column = 0; column < at.columns; column++)
        this.put(at.row + row, at.column + column, { look: headed && row === 0 ? "heading" : look, format: formats[column] });
    const first = cellIn(at, 0);
    this.put(first.row, first.column, { ...this.sheet.cells.get(key(first.row, first.column)), formula: made, spills: "block" });
    this.row = Math.max(this.row, at.row + at.rows);
    return at;
  }

  /** Excel calculates no custom function in such a rule (OfficeDev/office-js, issue 6135): a cell asks, and the rule looks at it. */
  alert(as: Alert["as"], over: Ref, when: Formula): this {
    if (asksIn(when).length) throw new Error(`${this.sheet.name}: a rule of colors asks a function`);
    this.sheet.alerts.push({ over, when, as });
    return this;
  }

  /** So many rows from the next one on are folded away under the row above them. */
  fold(rows: number): this {
    this.sheet.folds.push({ first: this.row, last: this.row + rows - 1 });
    return this;
  }

  picture(picture: Picture): this {
    this.sheet.pictures.push(picture);
    return this;
  }

  chart(chart: Chart): this {
    this.sheet.charts.push(chart);
    return this;
  }
}
