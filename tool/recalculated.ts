import type { Outcome } from "../shared/outcome";
import { letters } from "../shared/xlsx/letters";
import { faultOf } from "../sheet/cell";
import { model } from "../sheet/engine";
import { version } from "../sheet/enginedata";
import { namespace } from "../src/catalogue";
import { type Cached, nothingCached } from "../src/workbook/cached";
import { ofKey } from "../src/workbook/place";
import type { Template } from "../src/workbook/sheets/template";
import { shownCells } from "../src/workbook/shown";

const inCell = (name: string): string => `${namespace}.${name}`;

/** What is typed into the cells of a sheet, by their addresses. */
export interface Typed {
  readonly id: string;
  readonly name: string;
  readonly colNumber: number;
  readonly rowNumber: number;
  readonly cells: Readonly<Record<string, string>>;
}

/** A template as somebody would type it into the engine. */
export function typedOf({ book, live }: Template): Typed[] {
  const edition = live(inCell);
  return book.sheets.map((sheet) => {
    const cells: Record<string, string> = {};
    for (const [at, { value, formula }] of shownCells(sheet, edition, nothingCached)) {
      const [row, column] = ofKey(at);
      if (formula !== undefined) cells[letters(column) + (row + 1)] = `=${formula}`;
      else if (value !== undefined && value !== "") cells[letters(column) + (row + 1)] = String(value);
    }
    return { id: sheet.name, name: sheet.name, colNumber: 60, rowNumber: 400, cells };
  });
}

type Model = ReturnType<typeof model>;

export const typedInto = (sheets: readonly Typed[]): Model => model({ version, sheets });

/** What the cells of a model show. */
export const shownIn = ({ getters }: Model): Cached => ({
  value(sheetId, row, column): Outcome {
    const { value, message } = getters.getEvaluatedCell({ sheetId, row, col: column });
    if (typeof value === "string") return faultOf(value, message) ?? value;
    return value ?? "";
  },
  spill(sheetId, row, column) {
    const zone = getters.getSpreadZone({ sheetId, row, col: column });
    return zone ? { rows: zone.bottom - zone.top + 1, columns: zone.right - zone.left + 1 } : { rows: 1, columns: 1 };
  },
});

/** A template as the engine calculates it. */
export const recalculated = (template: Template): Cached => shownIn(typedInto(typedOf(template)));
