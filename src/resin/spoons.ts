import { quantity, text } from "../../shared/argument";
import { define } from "../../shared/contract";
import { cell } from "../../shared/result";
import { fromInternal, plainUnits } from "../../shared/unit";

const teaspoon = plainUnits("US").powder;

/** Eighths of a teaspoon, and what a set of kitchen spoons has for them. */
const spoonSet = [
  [4, "1/2 tsp"],
  [2, "1/4 tsp"],
  [1, "1/8 tsp"],
] as const;

/** A volume of powder in kitchen spoons, to the nearest eighth of a teaspoon; half an eighth rounds up. */
function inSpoons(volume: number): string {
  if (volume === 0) return "none";
  const eighths = Math.floor(fromInternal(volume, teaspoon) * 8 * (1 + 1e-9) + 0.5);
  if (eighths === 0) return "a pinch, under 1/8 tsp";
  const full = Math.floor(eighths / 8);
  const parts = spoonSet.flatMap(([eighth, name]) => (eighths & eighth ? [name] : []));
  return [...(full ? [`${full} tsp`] : []), ...parts].join(" + ");
}

/** Dye powder in kitchen spoons. */
export const spoons = define({
  name: "SPOONS",
  per: "piece",
  asks: "Which spoons do I measure it with?",
  args: { dye: quantity("powder", "dye powder", 1.25, [0, 1e6]) },
  shop: {},
  returns: cell(text("spoons", "1 tsp + 1/4 tsp")),
  format: "General",
  equation: "{dye} to the nearest 1/8 tsp, as full spoons of 1, 1/2, 1/4 and 1/8 tsp",
  source: "a US teaspoon is 1/768 gallon, 4.929 mL (NIST Handbook 44, App. C); the set of spoons: common practice, no source",
  accuracy: "to 1/16 tsp; how powder packs into a spoon varies more than that",
  cautions: ["dust"],
  worked: { typed: [1.25], gives: "1 tsp + 1/4 tsp" },
  run: ({ dye }) => inSpoons(dye),
});
