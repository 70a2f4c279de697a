import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import { addressOf, blockOf, cellsOf } from "../../../shared/xlsx/address";
import { callsOurs } from "../../../src/calls";
import { bookOf } from "../../book";
import { followedOf, type Ranges } from "./followed";

const isDate = (format: string): boolean => /[dyhs]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]/g, ""));

/** Whether a number format belongs to a result, and is no more than the engine's guess from what the result was made of. */
export function isOfResult({ getters }: Model, position: OSpreadsheet.CellPosition, format: string): boolean {
  if (isDate(format)) return true;
  const cell = getters.getCell(getters.getArrayFormulaSpreadingOn(position) ?? position);
  return cell?.isFormula === true && callsOurs(cell.compiledFormula.toFormulaString(getters));
}

/** Cells that the file they came from gave no number format. */
const unformattedIn = (here: Ranges): Set<string> =>
  new Set(
    Object.entries(here)
      .filter(([key]) => key.startsWith("unformatted "))
      .flatMap(([, range]) => cellsOf(blockOf(range)).map(addressOf)),
  );

/** The number formats that came with results become the cells' own: the engine's writer knows no others. */
export function withFormats(model: Model): OSpreadsheet.WorkbookData {
  const data: OSpreadsheet.WorkbookData = JSON.parse(JSON.stringify(bookOf(model).book));
  const numbers = new Map(Object.entries(data.formats).map(([number, format]) => [format, Number(number)]));
  const numberOf = (format: string): number => {
    if (!numbers.has(format)) numbers.set(format, Math.max(0, ...numbers.values()) + 1);
    return numbers.get(format)!;
  };
  for (const sheet of data.sheets) {
    const plain = unformattedIn(followedOf(data, sheet.id));
    for (const position of model.getters.getEvaluatedCellsPositions(sheet.id)) {
      const { format, type } = model.getters.getEvaluatedCell(position);
      const address = addressOf({ row: position.row, column: position.col });
      if (!format || type === "error" || plain.has(address) || model.getters.getCell(position)?.format === format) continue;
      if (isOfResult(model, position, format)) sheet.formats[address] = numberOf(format);
    }
  }
  data.formats = Object.fromEntries([...numbers].map(([format, number]) => [number, format]));
  return data;
}
