import { type Alert, type Allowed, at, type Cell, type Chart, type Look, refTo, type Sheet } from "./book";
import type { Formula, Ref } from "./formula";

export interface ColumnSpec {
  readonly title: string;
  readonly format?: string;
  /** Typed by the person: a list, a range or a date; else what `formula` makes of the other columns. */
  readonly input?: Allowed | true;
  readonly formula?: (columns: Readonly<Record<string, Ref>>) => Formula;
  /** One formula beside each row, rather than one that spills down the column. */
  readonly eachRow?: boolean;
  /** Columns that the formula fills beside its own. */
  readonly fills?: number;
  readonly hint?: string;
}

export interface LineSpec {
  readonly label: string;
  readonly value?: string | number | boolean;
  readonly formula?: Formula;
  readonly input?: Allowed | true;
  readonly format?: string;
  readonly unit?: string;
  readonly note?: string | Formula;
  readonly look?: Look;
  readonly fills?: { readonly rows: number; readonly columns: number };
}

/** Lays one sheet out from top to bottom and hands out references to what it placed. */
export class Page {
  readonly sheet: Sheet;
  private row = 0;

  constructor(name: string, purpose: string, widths: readonly number[], options: Partial<Pick<Sheet, "frozen" | "print">> = {}) {
    this.sheet = {
      name,
      purpose,
      cells: new Map(),
      widths,
      alerts: [],
      charts: [],
      merges: [],
      print: options.print ?? {},
      frozen: options.frozen,
    };
  }

  get nextRow(): number {
    return this.row;
  }

  put(row: number, column: number, cell: Cell): Ref {
    this.sheet.cells.set(at(row, column), cell);
    return refTo(this.sheet.name, row, column);
  }

  skip(rows = 1): this {
    this.row += rows;
    return this;
  }

  /** A line of text across the page. */
  say(text: string | Formula, look: Look = "note", rows = 1): Ref {
    const cell = typeof text === "string" ? { value: text, look } : { formula: text, look };
    const ref = this.put(this.row, 0, cell);
    this.sheet.merges.push({ row: this.row, column: 0, columns: this.sheet.widths.length, rows });
    this.row += rows;
    return ref;
  }

  title(text: string): this {
    this.say(text, "title");
    return this;
  }

  heading(text: string): this {
    this.put(this.row, 0, { value: text, look: "heading" });
    for (let column = 1; column < this.sheet.widths.length; column++) this.put(this.row, column, { look: "heading" });
    this.row++;
    return this;
  }

  /** Label, value, unit and a note side by side; answers the value's place. */
  line({ label, value, formula, input, format, unit, note, look, fills }: LineSpec): Ref {
    this.put(this.row, 0, { value: label, look: "label" });
    const ref = this.put(this.row, 1, {
      value,
      formula,
      format,
      fills,
      look: look ?? (input ? "input" : "result"),
      allowed: input && input !== true ? input : undefined,
    });
    if (unit) this.put(this.row, 2, { value: unit, look: "unit" });
    if (note) this.put(this.row, 3, typeof note === "string" ? { value: note, look: "note" } : { formula: note, look: "note" });
    this.row++;
    return ref;
  }

  /** A table with a header; typed columns first, spilled ones beside them. Answers a reference a column, and the whole. */
  table<C extends Record<string, ColumnSpec>>(
    columns: C,
    rows: readonly Partial<Record<keyof C, string | number | boolean>>[],
    spare = 0,
    column = 0,
  ): { readonly column: Readonly<Record<keyof C, Ref>>; readonly typed: Ref; readonly header: number } {
    const header = this.row;
    const length = rows.length + spare;
    const names = Object.keys(columns) as (keyof C & string)[];
    const placed: Record<string, Ref> = {};
    let at0 = column;
    let typedWidth = 0;
    for (const name of names) {
      placed[name] = refTo(this.sheet.name, header + 1, at0, length);
      if (columns[name].input) typedWidth = at0 - column + 1;
      at0 += columns[name].fills ?? 1;
    }
    at0 = column;
    for (const name of names) {
      const spec = columns[name];
      this.put(header, at0, { value: spec.title, look: "heading", hint: spec.hint });
      const made = spec.formula?.(placed);
      for (let r = 0; r < length; r++) {
        const value = rows[r]?.[name];
        const formula = made && (r === 0 || spec.eachRow) ? made : undefined;
        this.put(header + 1 + r, at0, {
          value,
          formula,
          fills: formula && !spec.eachRow ? { rows: length, columns: spec.fills ?? 1 } : undefined,
          perRow: made !== undefined,
          format: spec.format,
          look: spec.input ? "input" : "result",
          allowed: spec.input && spec.input !== true ? spec.input : undefined,
        });
      }
      at0 += spec.fills ?? 1;
    }
    this.row = header + 1 + length;
    return { column: placed as Record<keyof C, Ref>, typed: refTo(this.sheet.name, header + 1, column, length, typedWidth), header };
  }

  alert(alert: Alert): this {
    this.sheet.alerts.push(alert);
    return this;
  }

  chart(chart: Chart): this {
    this.sheet.charts.push(chart);
    return this;
  }
}
