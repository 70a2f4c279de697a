import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { SheetData } from "./sheetformulas";

type Zones = Record<string, number>;
type Pool<T> = Record<number, T>;

/** The pool of a workbook with what is used from the pool of another. */
class Grown<T> {
  readonly items: Pool<T>;
  private readonly numbers: Map<string, number>;

  constructor(
    own: Pool<T>,
    private readonly from: Pool<T>,
  ) {
    this.items = { ...own };
    this.numbers = new Map(Object.entries(own).map(([number, item]) => [JSON.stringify(item), Number(number)]));
  }

  private numberOf(item: T): number {
    const key = JSON.stringify(item);
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    const number = Math.max(0, ...Object.keys(this.items).map(Number)) + 1;
    this.items[number] = item;
    this.numbers.set(key, number);
    return number;
  }

  /** Cells with the style ids of this workbook; an id that the other pool does not hold is dropped. */
  renumbered(zones: Zones): Zones {
    return Object.fromEntries(
      Object.entries(zones).flatMap(([zone, number]) =>
        this.from[number] === undefined ? [] : [[zone, this.numberOf(this.from[number])] as const],
      ),
    );
  }
}

type Looks = Pick<WorkbookData, "styles" | "formats" | "borders">;

/** Sheets with the styles, number formats and borders of another workbook, and the pools of this one with those in them. */
export function withStyles(own: Looks, from: Looks, sheets: readonly SheetData[]): Looks & { readonly sheets: SheetData[] } {
  const styles = new Grown(own.styles, from.styles);
  const formats = new Grown(own.formats, from.formats);
  const borders = new Grown(own.borders, from.borders);
  const looked = sheets.map((sheet) => ({
    ...sheet,
    styles: styles.renumbered(sheet.styles),
    formats: formats.renumbered(sheet.formats),
    borders: borders.renumbered(sheet.borders),
  }));
  return { styles: styles.items, formats: formats.items, borders: borders.items, sheets: looked };
}
