import type { WorkbookData } from "@odoo/o-spreadsheet";

type SheetData = WorkbookData["sheets"][number];

/** Which of the part's rules each of the engine's rules came from: the index among its kind, by the engine's id. */
export interface Places {
  readonly rules: Readonly<Record<string, number>>;
  readonly validations: Readonly<Record<string, number>>;
}

const mark = /^#(\d+)$/;

/** The cells of a rule with its place behind them: the engine's reader takes it for one of the cells and changes nothing. */
export const withPlace = (open: string, place: number): string =>
  open.replace(/(\ssqref\s*=\s*)(["'])([^"']*)\2/, (_, is, quote, cells) => `${is}${quote}${cells.trim()} #${place}${quote}`);

function placesIn(rules: readonly { readonly id: string; ranges: string[] }[] = []): Record<string, number> {
  const found: Record<string, number> = {};
  for (const rule of rules) {
    const place = rule.ranges.map((range) => mark.exec(range)?.[1]).find(Boolean);
    if (place === undefined) continue;
    found[rule.id] = Number(place);
    rule.ranges = rule.ranges.filter((range) => !mark.test(range));
  }
  return found;
}

/** Removes these marks again and returns the places. */
export const takePlaces = (sheet: Partial<SheetData>): Places => ({
  rules: placesIn(sheet.conditionalFormats as never),
  validations: placesIn(sheet.dataValidationRules as never),
});
