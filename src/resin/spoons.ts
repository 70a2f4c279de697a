import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { type Sentence, sentence } from "../../shared/outcome";
import { cell } from "../../shared/result";
import { fromInternal, plainUnits } from "../../shared/unit";
import { text } from "../../shared/words";

const teaspoon = plainUnits("US").powder;

/** Eighths of a teaspoon, and what a set of kitchen spoons has for them. */
const spoonSet = [
  [4, "1/2 tsp"],
  [2, "1/4 tsp"],
  [1, "1/8 tsp"],
] as const;

const nothing = "none";
const pinch = "a pinch, under 1/8 tsp";

const eighthsOf = (volume: number): number => Math.floor(fromInternal(volume, teaspoon) * 8 * (1 + 1e-9) + 0.5);

/** A volume of powder in kitchen spoons, to the nearest eighth of a teaspoon; half an eighth rounds up. */
function inSpoons(volume: number): string {
  if (volume === 0) return nothing;
  const eighths = eighthsOf(volume);
  if (eighths === 0) return pinch;
  const full = Math.floor(eighths / 8);
  const parts = spoonSet.flatMap(([eighth, name]) => (eighths & eighth ? [name] : []));
  return [...(full ? [`${full} tsp`] : []), ...parts].join(" + ");
}

/** A rounding error above this share is told. */
const noticeable = 0.05;

/** The rounding error in words, where it is large enough to matter. */
function roundingOf(volume: number): readonly Sentence[] {
  const wanted = fromInternal(volume, teaspoon) * 8;
  const off = eighthsOf(volume) / wanted - 1;
  if (volume === 0 || Math.abs(off) < noticeable || off === -1) return [];
  const far = `${Math.round(100 * Math.abs(off))} %`;
  return [sentence`${inSpoons(volume)}, ${far} ${off > 0 ? "over" : "under"}: dye by taste here.`];
}

/** The same in built-in spreadsheet syntax. */
function inSpoonsTwin(): string {
  const eighths = `INT({dye}/${teaspoon.factor}*8*(1+1E-9)+0.5)`;
  const full = `IF(${eighths}>=8," + "&INT(${eighths}/8)&" tsp","")`;
  const parts = spoonSet.map(([eighth, name]) => `IF(MOD(${eighths},${eighth * 2})>=${eighth}," + ${name}","")`);
  return `IF({dye}=0,"${nothing}",IF(${eighths}=0,"${pinch}",MID(${[full, ...parts].join("&")},4,99)))`;
}

/** Dye powder in kitchen spoons. */
export const spoons = define({
  name: "SPOONS",
  per: "piece",
  asks: "Which measuring spoons do I use?",
  args: { dye: quantity("powder", "dye powder", 1.25, [0, 1e6]) },
  shop: {},
  returns: cell(text("spoons", "1 tsp + 1/4 tsp")),
  format: "General",
  equation: "{dye} to the nearest 1/8 tsp, as level spoons of 1, 1/2, 1/4 and 1/8 tsp",
  source: "a US teaspoon is 1/768 gallon, 4.929 mL (NIST Handbook 44, App. C); the set of spoons: common practice, no source",
  accuracy: "to 1/16 tsp; how powder packs into a spoon varies more than that",
  cautions: ["dust"],
  worked: { typed: [1.25], gives: "1 tsp + 1/4 tsp" },
  twin: inSpoonsTwin(),
  beside: ({ dye }) => roundingOf(dye),
  run: ({ dye }) => inSpoons(dye),
});
