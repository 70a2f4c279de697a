import { type Arg, optional, quantity, text } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { findSpecies, gravityAt } from "./species";

type State = "dry" | "12 %" | "green";
const states: Readonly<Record<string, State>> = { dry: "dry", "12%": "12 %", "0.12": "12 %", "12": "12 %", green: "green" };

/** dry, 12 % or green; a cell that shows 12 % holds 0.12. */
const at: Arg<State> = {
  label: "state of the wood",
  example: "dry",
  sample: () => "dry, 12 % or green",
  choices: ["dry", "12 %", "green"],
  read: (typed, units) => {
    const word = text("state of the wood", "dry").read(typed, units);
    const found = states[word.toLowerCase().replace(/\s/g, "")];
    if (!found) throw badInput`state of the wood: “${word}” is not one of dry, 12 %, green`;
    return found;
  },
};

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
  accuracy: "a species mean: single pieces lie about 10 % either side (Wood Handbook ch. 5); burl and decayed wood are in no table",
  cautions: [],
  worked: { typed: ["silver maple"], gives: 0.498075616934571 },
  run: ({ species, at = "dry" }) => {
    const wood = findSpecies(species);
    if (at === "green") return as(wood.green);
    return as(at === "12 %" ? (wood.at12 ?? gravityAt(wood, 0.12)) : gravityAt(wood, 0));
  },
});
