import { type Arg, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { text } from "../../shared/words";
import { findSpecies, gravityAt } from "./species";

type State = "dry" | "12 %" | "green";
const states = new Map<string, State>([
  ["dry", "dry"],
  ["12%", "12 %"],
  ["0.12", "12 %"],
  ["12", "12 %"],
  ["green", "green"],
]);

/** dry, 12 % or green; a cell that shows 12 % holds 0.12. */
const at: Arg<State> = {
  label: "state of the wood",
  example: "dry",
  sample: () => "dry, 12 % or green",
  choices: ["dry", "12 %", "green"],
  read: (typed, units) => {
    const word = text("state of the wood", "dry").read(typed, units);
    const found = states.get(word.toLowerCase().replace(/\s/g, ""));
    if (!found) throw badInput`state of the wood: “${word}” is not one of dry, 12 %, green`;
    return found;
  },
};

/** Coefficient of variation of specific gravity within a species: Wood Handbook, ch. 5 (from memory). */
const spread = 0.1;

function gravityOf({ species, at = "dry" }: { species: string; at?: State }): number {
  const wood = findSpecies(species);
  if (at === "green") return wood.green;
  return at === "12 %" ? (wood.at12 ?? gravityAt(wood, 0.12)) : gravityAt(wood, 0);
}

/** Specific gravity of a species: oven-dry mass on its volume oven-dry, at 12 % or green. */
export const gravity = define({
  name: "GRAVITY",
  per: "piece",
  asks: "How dense is this kind of wood?",
  args: { species: text("species", "silver maple"), at: optional(at) },
  returns: cell(quantity("gravity", "specific gravity", 0.498)),
  format: "0.00",
  equation: "tabled; oven-dry = green gravity / (1 − shrinkage), shrinkage tabled or 26.5 % × green gravity",
  source: "Wood Handbook, FPL-GTR-282 (2021), Table 5-3 with eqs. 4-9, 4-11 and 4-12; a few woods from USDA Forest Service FIA (NRS-38)",
  accuracy:
    "a species mean: two pieces in three lie within 10 % of it (Wood Handbook ch. 5, from memory); burl and decayed wood are in no table",
  cautions: [],
  worked: { typed: ["silver maple"], gives: 0.498075616934571 },
  trust: (given) => [gravityOf(given) * (1 - spread), gravityOf(given) * (1 + spread)],
  run: (given) => as(gravityOf(given)),
});
