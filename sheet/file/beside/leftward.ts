import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { addressOf } from "../../../shared/xlsx/address";

export type Engine = Pick<typeof OSpreadsheet, "CorePlugin" | "registries">;

/**
 * The engine takes text for left anyway and keeps no word of it: a blank cell that was set to the left would then show the next
 * number on the right. Here the word is kept.
 */
export function keepLeft({ CorePlugin, registries }: Engine): void {
  class Leftward extends CorePlugin {
    static override getters = [];

    override export(data: OSpreadsheet.WorkbookData): void {
      const numbers = new Map(Object.entries(data.styles).map(([number, style]) => [JSON.stringify(style), Number(number)]));
      const numberOf = (style: object): number => {
        const text = JSON.stringify(style);
        if (!numbers.has(text)) numbers.set(text, Math.max(0, ...numbers.values()) + 1);
        return numbers.get(text)!;
      };
      for (const sheet of data.sheets)
        for (const cell of this.getters.getCells(sheet.id))
          if (cell.style?.align === "left" && !cell.isFormula) {
            const { row, col } = this.getters.getCellPosition(cell.id);
            sheet.styles[addressOf({ row, column: col })] = numberOf(cell.style);
          }
      data.styles = Object.fromEntries([...numbers].map(([text, number]) => [number, JSON.parse(text)]));
    }

    override exportForExcel(data: OSpreadsheet.ExcelWorkbookData): void {
      this.export(data as never);
    }
  }
  registries.corePluginRegistry.add("left alignment", Leftward as never);
}
