import { fractions, plainNumber } from "../../shared/numberformat";
import { plainUnits } from "../../shared/unit";
import type { Alert, Allowed, Cell, Chart, Look, Picture, Print, Sheet } from "./book";
import { asksIn, type Formula, formula } from "./formula";
import { cellIn, key, type Ref, refTo } from "./place";

export type Value = string | number | boolean;

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

/** Row of the sentence on what the sheet is for, below its title. */
export const leadRow = 1;

const inches = plainUnits("US").length.name;

/** An input for a number always has a number format: in a General cell, programs read 3/4 as a date and give the cell a date format. */
export const formatOf = (input: Allowed | true | undefined, unit: string | Formula | undefined): string | undefined =>
  input && input !== true && "from" in input ? (unit === inches ? fractions : plainNumber) : undefined;

export const content = (text: string | Formula): Cell => (typeof text === "string" ? { value: text } : { formula: text });

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

  /** The value cell of the next line, for a note of that line to refer to. */
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

  /** Printed columns. */
  private get columns(): number {
    return this.sheet.print.columns ?? this.sheet.widths.length;
  }

  /** A sentence across the printed columns, from `first` on. */
  say(text: string | Formula, look: Look = "note", first = 0): Ref {
    const ref = this.across(this.row, first, (this.sheet.print.two?.first ?? this.columns) - first, { ...content(text), look });
    this.row++;
    return ref;
  }

  /** One cell merged across a number of columns. */
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

  /** The first warning that applies takes the place of the sentence on what the sheet is for. */
  warn(...warnings: readonly (readonly [when: Formula, words: string | Formula])[]): this {
    const lead = refTo(this.sheet.name, leadRow, 0);
    const purpose = formula`"${this.sheet.purpose}"`;
    const said = (words: string | Formula) => (typeof words === "string" ? formula`"${words}"` : words);
    const made = warnings.reduceRight<Formula>((rest, [when, words]) => formula`IF(${when},${said(words)},${rest})`, purpose);
    this.put(lead.row, lead.column, { formula: made, look: "lead" });
    // A conditional format that refers to its own cell works in every program.
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

  /** Label, value, unit and a note side by side; returns the reference of the value. */
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

  /** The cells that a spilling formula fills; the first row is a heading if `headed`. */
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

  /** Groups the next rows and collapses them under the row above. */
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
