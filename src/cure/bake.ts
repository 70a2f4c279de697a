import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said, sentence, tidy } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { fullness } from "../resin/settings";
import { middlingGravity } from "../wood/voids";
import { filledWood, liquid } from "./filled";
import { baking, heating, likelyBake } from "./heating";
import { conductionSource, inPractice, ownHeatOf, practice, rangeHolds } from "./ovenwords";
import { pieceArgs, refuseThick } from "./piece";
import { bakeBy, core, heatOfCure, hold, oven, ovenSurfaceCoefficient, room, shortestBake, thickest } from "./settings";

export const ovenSettings = { oven, room, ovenSurfaceCoefficient, fullness, thickest };
export const bakeSettings = { ...ovenSettings, core, hold, shortestBake, bakeBy };

/** Minutes in the oven until the core has come to temperature and been held there, not under the shortest bake. */
export const bake = define({
  name: "BAKE",
  per: "piece",
  asks: "How long do I bake it?",
  args: pieceArgs,
  shop: { ...bakeSettings, heatOfCure },
  returns: cell(quantity("minutes", "minutes in the oven", 46)),
  format: "0",
  equation: "{heating} until the core reaches {core} in an oven at {oven}, starting at {room}; plus {hold}; at least {shortestBake}",
  source: `${conductionSource(liquid)}; shortest bake: common practice, no source`,
  accuracy: `heat conduction alone. ${rangeHolds} Pieces wrapped in one bundle count as one piece of the bundle's size. Where the label asks for a hold at temperature, set “hold”. The resin's own heat and the oven's temperature swings are not in it: the maker's label decides`,
  cautions: ["oven", "resin"],
  worked: { typed: [0.75, 0.75, 5, 0.4], gives: 46.1001367161974 },
  steps: (given) => {
    const { k, heat } = filledWood(given.gravity ?? middlingGravity, given.fullness);
    return {
      heating: said("minutes", heating(given, given)),
      conductivity: `${tidy(k)} W/mK across the grain`,
      heatToWarm: `${tidy(heat / 1000)} kJ/m³K`,
    };
  },
  trust: (given) => likelyBake(given, given),
  beside: (given) => [...(baking(given, given) > practice ? [sentence`${inPractice}`] : []), ownHeatOf(given)],
  run: (given) => {
    refuseThick(given, given.thickest);
    return as(baking(given, given));
  },
});
