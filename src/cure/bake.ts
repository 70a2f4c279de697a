import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said, tidy } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { fullness } from "../resin/settings";
import { middlingGravity } from "../wood/voids";
import { filledWood } from "./filled";
import { atBest, atWorst, baking, heating } from "./heating";
import { pieceArgs, refuseThick } from "./piece";
import { core, hold, oven, ovenSurfaceCoefficient, room, shortestBake, thickest } from "./settings";

export const ovenSettings = { oven, room, ovenSurfaceCoefficient, fullness, thickest };
export const bakeSettings = { ...ovenSettings, core, hold, shortestBake };

export const conductionSource =
  "heat conduction in a block, the product of slab series: Incropera, 5.5 and 5.8; wood: Wood Handbook, FPL-GTR-282 (2021), eq. 4-17 and ch. 4; resin as cast acrylic (0.19 W/mK, 1190 kg/m³, 1470 J/kgK)";

export const notInIt = "the resin's own heat of cure and the oven's swing are not in it: the maker's label decides";

/** Minutes in the oven until the core has come to temperature and been held there, not under the shortest bake. */
export const bake = define({
  name: "BAKE",
  per: "piece",
  asks: "How long must it bake?",
  args: pieceArgs,
  shop: bakeSettings,
  returns: cell(quantity("minutes", "minutes in the oven", 41.7)),
  format: "0",
  equation:
    "{heating} until the core is at {core}, with the oven at {oven} and the piece at {room} as it goes in; plus {hold}; not under {shortestBake}",
  source: `${conductionSource}; shortest bake: common practice, no source`,
  accuracy: `common practice says about 30 minutes for small pieces and up to an hour for larger ones at 200 °F. Conduction agrees for a 3/4 in blank in foil (42 minutes), says more for pieces over about 1 1/4 in, and more again for foil-wrapped or crowded ones. Pieces wrapped in one bundle count as one piece of the bundle's size. Where the label asks for a hold at temperature, set “hold”; ${notInIt}`,
  cautions: ["oven", "resin"],
  worked: { typed: [0.75, 0.75, 5, 0.4], gives: 41.76224502556663 },
  steps: (given) => {
    const { k, heat } = filledWood(given.gravity ?? middlingGravity, given.fullness);
    return {
      heating: said("minutes", heating(given, given)),
      conductivity: `${tidy(k)} W/mK across the grain`,
      heatToWarm: `${tidy(heat / 1000)} kJ/m³K`,
    };
  },
  trust: (given) => [baking(given, given, atBest), given.core < given.oven - atWorst.cooler ? baking(given, given, atWorst) : undefined],
  run: (given) => {
    refuseThick(given, given.thickest);
    return as(baking(given, given));
  },
});
