import { colorKey, isClear } from "./color";
import type { Given } from "./given";
import type { Part } from "./parts";
import type { OnHand } from "./resins";
import type { Begin } from "./stock";

/** One color of a plan: its pieces, and the resin it begins with. */
export interface PlanColor {
  /** As the first row typed it; "" is a color of its own. */
  readonly name: string;
  readonly parts: readonly Part[];
  readonly begin: Begin;
}

export interface Colors {
  readonly colors: readonly PlanColor[];
  /** Resin on hand of the shop that none of these colors may use. */
  readonly unused: number;
}

/** The table of resins, where anything stands in it. */
export const resinsIn = ({ resins }: Given): Given["resins"] => (resins?.length ? resins : undefined);

function grouped(parts: readonly Part[]): Map<string, Part[]> {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    const key = colorKey(part.row.color);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return groups;
}

/** The colors in the order of their first rows, each with its stock; in a plan without dates no day of mixing counts. */
export function colorsOf(parts: readonly Part[], given: Given, dated: boolean): Colors {
  const groups = [...grouped(parts)];
  const shopKey = groups.length === 1 ? groups[0][0] : "";
  const { dyeRate, resinOnHand, resinMixedOn, resinDyeRate } = given;
  const resins = resinsIn(given);
  const shops: OnHand = { color: shopKey, volume: resinOnHand, mixedOn: resinMixedOn, strength: resinDyeRate };
  const stocks = new Map((resins ?? [shops]).map((stock) => [colorKey(stock.color), stock]));
  const colors = groups.map(([key, own]): PlanColor => {
    const rate = isClear(key) ? 0 : dyeRate;
    const stock = stocks.get(key);
    // Clear resin has no dye in it unless a rate was typed.
    const said = isClear(key) && !resins && stock?.strength === dyeRate ? undefined : stock?.strength;
    const unsaid = isClear(key) ? 0 : resinDyeRate === undefined ? undefined : rate;
    return {
      name: own[0].row.color,
      parts: own,
      begin: { volume: stock?.volume ?? 0, strength: said ?? unsaid, since: dated ? stock?.mixedOn : undefined, rate },
    };
  });
  const isUsed = resins || !groups.length || groups.some(([key]) => key === shopKey);
  return { colors, unused: isUsed ? 0 : resinOnHand };
}
