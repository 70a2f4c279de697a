import type * as OSpreadsheet from "@odoo/o-spreadsheet";

import { isPivot, pivotInTheWay, tears } from "./pivotguard";

/** Ranges of one sheet by what they are for. */
export type Ranges = Readonly<Record<string, string>>;

/** Ranges that a workbook keeps for us, by its sheets: they move with their cells, and go with them. */
type Followed = Readonly<Record<string, Ranges>>;

export type Engine = Pick<typeof OSpreadsheet, "CorePlugin" | "registries">;

type Range = OSpreadsheet.Range;
type Adapters = OSpreadsheet.RangeAdapterFunctions;
type Keeping = OSpreadsheet.WorkbookData & { followed?: Followed };

/** What a workbook's own form says of its ranges. */
export const allFollowed = (book: object): Followed => (book as Keeping).followed ?? {};
export const followedOf = (book: object, sheetId: string): Ranges => allFollowed(book)[sheetId] ?? {};

/**
 * What the engine does not know (a note, a print area) stands beside its workbook, and where it belongs is told by a range that
 * the engine keeps for us. The ranges are a part of the workbook's data, so they are there after a reload, and undo undoes them.
 */
export function follow({ CorePlugin, registries }: Engine): void {
  class FollowedRanges extends CorePlugin {
    static override getters = [];
    ranges: Record<string, Record<string, Range | undefined>> = {};

    override allowDispatch(command: OSpreadsheet.CoreCommand): OSpreadsheet.CommandResult {
      const torn = Object.entries(this.ranges).some(([sheetId, ranges]) =>
        Object.entries(ranges).some(([key, range]) => range?.sheetId === sheetId && isPivot(key) && tears(command, sheetId, range.zone)),
      );
      return (torn ? pivotInTheWay : "Success") as OSpreadsheet.CommandResult;
    }

    override adaptRanges({ applyChange }: Adapters): void {
      const { history } = this as unknown as { history: { update: (...path: unknown[]) => void } };
      for (const [sheetId, ranges] of Object.entries(this.ranges))
        for (const [key, range] of Object.entries(ranges)) {
          if (!range) continue;
          const { changeType, range: changed } = applyChange(range);
          if (changeType !== "NONE") history.update("ranges", sheetId, key, changeType === "REMOVE" ? undefined : changed);
        }
    }

    override import(data: Keeping): void {
      for (const [sheetId, ranges] of Object.entries(data.followed ?? {}))
        this.ranges[sheetId] = Object.fromEntries(
          Object.entries(ranges).map(([key, range]) => [key, this.getters.getRangeFromSheetXC(sheetId, range)]),
        );
    }

    override export(data: Keeping): void {
      const told = (sheetId: string) =>
        Object.entries(this.ranges[sheetId] ?? {}).flatMap(([key, range]) =>
          // What was moved to another sheet belongs to nothing here.
          range?.sheetId === sheetId ? [[key, this.getters.getRangeString(range, sheetId)] as const] : [],
        );
      const followed = data.sheets.map(({ id }) => [id, Object.fromEntries(told(id))] as const);
      data.followed = Object.fromEntries(followed.filter(([, ranges]) => Object.keys(ranges).length));
    }
  }
  registries.corePluginRegistry.add("followed ranges", FollowedRanges as never);
}
