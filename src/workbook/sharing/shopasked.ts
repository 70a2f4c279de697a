import type { Cells } from "../../../shared/columns";
import { isFault } from "../../../shared/outcome";
import type { Shop } from "../../../shared/settings";
import { fromInternal } from "../../../shared/unit";
import { readShop } from "../../catalogue";
import { type Ref, refText, refTo } from "../place";
import type { Habits } from "../plain";
import { cellAt, heldBy, type OpenSheet } from "./opened";

/** What a shop's range holds, as the functions take it. */
export const shopCells = (sheets: readonly OpenSheet[], { sheet, row, column, rows }: Ref): Cells =>
  Array.from({ length: rows }, (_, down) =>
    [0, 1].map((right) => {
      const cell = cellAt(sheets, refTo(sheet, row + down, column + right));
      const value = cell && heldBy(cell);
      return isFault(value) ? null : (value ?? null);
    }),
  );

/** How plain formulas take a shop's settings: by cell where something may be typed, else the value in use now. */
export function habitsOf(sheets: readonly OpenSheet[], range: Ref, shop: Shop): Habits {
  const standard: Habits["standard"] = (setting, system) => readShop([["units", system]]).get(setting);
  return {
    units: shop.units,
    standard,
    setting(name, setting) {
      const now = shop.get(setting);
      const holds = typeof now === "number" ? String(setting.kind ? fromInternal(now, shop.units[setting.kind]) : now) : undefined;
      if (holds === undefined) return undefined;
      for (let down = 0; down < range.rows; down++) {
        const label = cellAt(sheets, refTo(range.sheet, range.row + down, range.column));
        if (
          String(label?.value ?? "")
            .trim()
            .toLowerCase() !== name.toLowerCase()
        )
          continue;
        const cell = refText({ ...refTo(range.sheet, range.row + down, range.column + 1), whole: true }, "", undefined);
        return `IF(ISNUMBER(${cell}),${cell},${holds})`;
      }
      return holds;
    },
  };
}
