import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { nameOf } from "../src/wood/species";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

/** The engine's own part that judges what is typed against the rule of its cell. */
interface Judge {
  getters: Pick<OSpreadsheet.Getters, "getDataValidationRangeValues">;
  getRuleErrorForCellValue(
    value: OSpreadsheet.CellValue,
    at: OSpreadsheet.CellPosition,
    rule: OSpreadsheet.DataValidationRule,
  ): string | undefined;
}

const outside = "Check this: it is not what this cell is for.";

/**
 * A list of woods takes a wood however it is spelled, as the functions do; Excel and LibreOffice are told by the file to say
 * nothing there. What does not keep a rule that is a formula is told in words.
 */
export function takeOtherNames({ registries }: Engine): void {
  const judge = registries.coreViewsPluginRegistry.get("data_validation_ui").prototype as unknown as Judge;
  const own = judge.getRuleErrorForCellValue;
  judge.getRuleErrorForCellValue = function (value, at, rule) {
    const error = own.call(this, value, at, rule);
    const { criterion } = rule;
    if (error === undefined) return undefined;
    if (criterion.type === "customFormula") return outside;
    const wood = criterion.type === "isValueInRange" && typeof value === "string" ? nameOf(value) : undefined;
    if (wood === undefined) return error;
    const list = this.getters.getDataValidationRangeValues(at.sheetId, criterion);
    return list.some((one) => one.value.toLowerCase() === wood.toLowerCase()) ? undefined : error;
  };
}
