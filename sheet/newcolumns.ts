import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { freeColumn } from "../shared/xlsx/moved/tables";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

type Table = ReturnType<OSpreadsheet.Model["getters"]["getCoreTables"]>[number];
type Tables = new (
  ...args: never[]
) => {
  readonly getters: Pick<OSpreadsheet.Model["getters"], "getCell">;
  dispatch(type: "UPDATE_CELL", payload: { sheetId: string; col: number; row: number; content: string }): unknown;
  extendTableRight(sheetId: string, table: Table): void;
};

/** A table that grows a column, because somebody typed beside it, gives it a name: files have none without, and other programs do the same. */
export function nameNewColumns({ registries: { corePluginRegistry } }: Engine): void {
  const Base = corePluginRegistry.get("tables") as unknown as Tables;
  class NamedColumns extends Base {
    override extendTableRight(sheetId: string, table: Table): void {
      super.extendTableRight(sheetId, table);
      if (!table.config.numberOfHeaders) return;
      const { left, right, top } = table.range.zone;
      const textAt = (col: number) => {
        const cell = this.getters.getCell({ sheetId, col, row: top });
        return cell?.isFormula ? "=" : (cell?.content ?? "");
      };
      if (textAt(right + 1)) return;
      const taken = new Set(Array.from({ length: right - left + 1 }, (_, i) => textAt(left + i).toLowerCase()));
      // A header that is just being typed is written after this and wins.
      this.dispatch("UPDATE_CELL", { sheetId, col: right + 1, row: top, content: freeColumn(taken) });
    }
  }
  corePluginRegistry.replace("tables", NamedColumns as never);
}
