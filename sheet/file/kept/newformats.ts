import type { Model } from "@odoo/o-spreadsheet";
import { addressOf, atOf, blockOf } from "../../../shared/xlsx/address";
import type { StyleChange } from "../../../shared/xlsx/stylechange";
import { isOfResult } from "../beside/resultformats";

/** Number formats that came with the results of new formulas become their cells' own. */
export function withResultFormats(
  model: Model,
  sheetId: string,
  changed: readonly string[],
  looks: Map<string, StyleChange>,
  spelt: (format: string) => string,
): void {
  const { getters } = model;
  for (const address of changed) {
    const { row, column } = atOf(address);
    const position = { sheetId, row, col: column };
    if (!getters.getCell(position)?.isFormula) continue;
    const zone = getters.getSpreadZone(position) ?? blockOf(address);
    for (let down = zone.top; down <= zone.bottom; down++)
      for (let right = zone.left; right <= zone.right; right++) {
        const one = { sheetId, row: down, col: right };
        const { format, type } = getters.getEvaluatedCell(one);
        const key = addressOf({ row: down, column: right });
        if (
          !format ||
          type === "error" ||
          getters.getCell(one)?.format ||
          looks.get(key)?.format !== undefined ||
          !isOfResult(model, one, format)
        )
          continue;
        looks.set(key, { ...looks.get(key), format: spelt(format) });
      }
  }
}
