import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { sentence, tidy } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { fullness } from "../resin/settings";
import { gravityArg, wallGravity } from "../wood/voids";
import { filledWood, liquid } from "./filled";
import { ownHeat } from "./ovenwords";
import { selfHeating } from "./rise";
import { heatOfCure } from "./settings";

const voids = `(1-{gravity}/${wallGravity})`;

/** How far the resin's own heat can warm the piece: f v ρr ΔH / ρc. */
export const selfheat = define({
  name: "SELFHEAT",
  per: "piece",
  asks: "How much can the resin heat itself?",
  args: { gravity: gravityArg, fullness },
  shop: { heatOfCure },
  returns: cell(quantity("rise", "most that the resin's own heat can warm the piece", 140)),
  format: "0",
  equation: "{fullness} × (1 − {gravity}/1.54) × 1030 kg/m³ × {heatOfCure} / {heatToWarm}",
  source:
    "heat balance with no heat lost; heat of cure from memory, an assumption for dimethacrylates; resin 1030 kg/m³ and 2000 J/kgK from memory; wood: Wood Handbook, FPL-GTR-282 (2021), ch. 4",
  accuracy:
    "the most there can be, at any thickness: as if all the heat came at once and none got out. A thin piece loses nearly all of it; a thick one comes closer. Some of the heat comes before the core is hot",
  cautions: ["oven"],
  worked: { typed: [0.4, 0.6], gives: 140.3734507443865 },
  twin: `{fullness}*${voids}*${liquid.density}*{heatOfCure}/(1379000*{gravity}+{fullness}*${voids}*${liquid.density * liquid.heat})`,
  steps: ({ gravity, fullness }) => ({ heatToWarm: `${tidy(filledWood(gravity, fullness).heat / 1000)} kJ/m³K` }),
  beside: () => [sentence`The resin heats itself: ${ownHeat}.`],
  run: ({ gravity, fullness, heatOfCure }) => as(selfHeating(gravity, fullness, heatOfCure)),
});
