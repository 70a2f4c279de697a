import type { Style, WorkbookData } from "@odoo/o-spreadsheet";

type SheetData = WorkbookData["sheets"][number];
export type Content = string | number;

export interface Look {
  readonly style?: Style;
  readonly format?: string;
}

/** Styles or formats by number, each kept once. */
class Pool<T> {
  private readonly numbers = new Map<string, number>();

  numberOf(item: T): number {
    const key = JSON.stringify(item);
    if (!this.numbers.has(key)) this.numbers.set(key, this.numbers.size + 1);
    return this.numbers.get(key)!;
  }

  get items(): Record<number, T> {
    return Object.fromEntries([...this.numbers].map(([key, number]) => [number, JSON.parse(key)]));
  }
}

/** A sheet under construction. */
export class Draft {
  readonly cells: Record<string, string> = {};
  readonly styles: Record<string, number> = {};
  readonly formats: Record<string, number> = {};

  constructor(private readonly book: Book) {}

  put(cell: string, content: Content, look: Look = {}): void {
    this.cells[cell] = String(content);
    this.paint(cell, look);
  }

  paint(zone: string, { style, format }: Look): void {
    if (style) this.styles[zone] = this.book.styles.numberOf(style);
    if (format) this.formats[zone] = this.book.formats.numberOf(format);
  }
}

/** A workbook under construction, in the engine's own form. */
export class Book {
  readonly styles = new Pool<Style>();
  readonly formats = new Pool<string>();
  private readonly sheets: Partial<SheetData>[] = [];

  sheet(id: string, name: string, size: { columns: number; rows: number }, more: Partial<SheetData>, fill: (draft: Draft) => void): void {
    const draft = new Draft(this);
    fill(draft);
    const { cells, styles, formats } = draft;
    this.sheets.push({ id, name, colNumber: size.columns, rowNumber: size.rows, cells, styles, formats, ...more });
  }

  data(namedRanges: Readonly<Record<string, string>>): object {
    return { version, sheets: this.sheets, styles: this.styles.items, formats: this.formats.items, namedRanges, settings: { locale } };
  }
}

/** The form of the engine's data that these fields are written in. */
export const version = "19.3.2";

/** Points in numbers, commas between arguments, and days that read one way only. */
const locale = {
  name: "International",
  code: "en_US",
  thousandsSeparator: ",",
  decimalSeparator: ".",
  weekStart: 1,
  dateFormat: "yyyy-mm-dd",
  timeFormat: "hh:mm",
  formulaArgSeparator: ",",
};

export const widths = (pixels: readonly number[]) => Object.fromEntries(pixels.map((size, i) => [i, { size }]));
