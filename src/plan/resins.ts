import { type Arg, date, isBlank, optional } from "../../shared/argument";
import { badInput, type Cell } from "../../shared/outcome";
import type { Units } from "../../shared/unit";
import { rows } from "../../shared/whole";
import { resinOnHand, resinDyeRate as shopDyeRate } from "../resin/settings";
import { colorArg, colorKey } from "./color";
import { isHeading } from "./pieces";

/** Mixed resin of one color that stands in the shop. */
export interface OnHand {
  readonly color: string;
  readonly volume: number;
  /** Day its oldest part was mixed; unknown where blank. */
  readonly mixedOn?: number;
  /** What it was dyed at; unknown where blank. */
  readonly strength?: number;
}

const { optional: _, ...dyedAt } = shopDyeRate;

const table = rows("resins", {
  color: optional(colorArg),
  volume: optional({ ...resinOnHand, label: "on hand" }),
  mixedOn: optional(date("mixed on", "2026-03-14")),
  strength: optional({ ...dyedAt, label: "dye rate" }),
});

function take(cells: readonly (readonly Cell[])[], units: Units): OnHand[] {
  const lines = table.take!(
    cells.map((line) => line.map((cell, i) => (cell === 0 && (i === 0 || i === 2) ? "" : cell))),
    units,
  ).filter(({ cells: [, onHand] }, i) => !(i === 0 && isHeading(onHand)));
  const seen = new Set<string>();
  return lines.flatMap(({ given, trouble, index, cells: [color, onHand] }) => {
    if (trouble) throw trouble.about(`resins, row ${index + 1}: `);
    if (isBlank(color) && (isBlank(onHand) || onHand === 0)) return [];
    const key = colorKey(given.color ?? "");
    if (seen.has(key))
      throw badInput`resins: ${given.color ? `“${given.color}”` : "the resin without a color"} is listed twice: put both in one row`;
    seen.add(key);
    return [{ color: given.color ?? "", volume: given.volume ?? 0, mixedOn: given.mixedOn, strength: given.strength }];
  });
}

/** Mixed resin on hand, a row a color: color, on hand, mixed on, dye rate. */
export const resinsArg: Arg<readonly OnHand[]> = {
  ...table,
  label: "resins: color, on hand, mixed on, dye rate",
  example: [["blue", 1.5, "2026-03-01", 0.25]],
  read: (cell, units) => take([[cell]], units),
  take,
  say: ({ length }: readonly OnHand[]) => (length === 1 ? "1 color" : `${length} colors`),
};
