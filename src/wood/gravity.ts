import { type Arg, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { text } from "../../shared/words";
import { findSpecies, gravityAt, type Species } from "./species";

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

function gravityOf(wood: Species, at: State = "dry"): number {
  if (at === "green") return wood.green;
  return at === "12 %" ? (wood.at12 ?? gravityAt(wood, 0.12)) : gravityAt(wood, 0);
}

/** The spread about the value; the number that the table itself prints for the wood at 12 % is never outside it. */
function range({ species, at }: { species: string; at?: State }): [least: number, most: number] {
  const wood = findSpecies(species);
  const value = gravityOf(wood, at);
  const tabled = at === "green" ? wood.green : (wood.at12 ?? value);
  return [Math.min(value * (1 - spread), tabled), Math.max(value * (1 + spread), tabled)];
}

/** Specific gravity of a species: oven-dry mass on its volume oven-dry, at 12 % or green. */
export const gravity = define({
  name: "GRAVITY",
  per: "piece",
  asks: "How dense is this kind of wood?",
  args: { species: text("species", "silver maple"), at: optional(at) },
  returns: cell(quantity("gravity", "specific gravity", 0.492)),
  format: "0.00",
  equation: "tabled; dry = green gravity / (1 − shrinkage), the shrinkage tabled, else (1 − green / gravity at 12 %) / 0.6",
  source:
    "Wood Handbook, FPL-GTR-282 (2021), Tables 5-3 and 4-3 with eqs. 4-9, 4-11 and 4-12; a few woods from USDA Forest Service FIA (NRS-38); ten shrinkages from memory",
  accuracy:
    "a species mean: two pieces in three lie within 10 % of it (Wood Handbook ch. 5, from memory); burl and decayed wood are in no table",
  cautions: [],
  worked: { typed: ["silver maple"], gives: 0.49238095238095 },
  trust: range,
  steps: ({ species, at }) => {
    const wood = findSpecies(species);
    return { wood: wood.name, read: wood.source, ...(wood.fromMemory && at === undefined ? { shrinkage: "from memory" } : {}) };
  },
  run: ({ species, at }) => as(gravityOf(findSpecies(species), at)),
});
