import { count, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as, type Quantity } from "../../shared/quantity";
import { table } from "../../shared/result";
import { bakeSettings } from "./bake";
import { atCore, atFace } from "./block";
import { liquid } from "./filled";
import { baking, slabsOf, temperatureAt } from "./heating";
import { conductionSource, notInIt } from "./ovenwords";
import { pieceArgs, refuseThick } from "./piece";

const temperature = (label: string) => quantity("temperature", label, 190, [-100, 300]);

/** Core and surface from the moment the piece goes in until it comes out, for a chart. */
export const bakecurve = define({
  name: "BAKECURVE",
  per: "call",
  asks: "How does it warm up?",
  args: { ...pieceArgs, points: optional(count("points", 25, [2, 500]), 25) },
  shop: bakeSettings,
  returns: table({ minutes: quantity("minutes", "minutes", 20), core: temperature("core"), surface: temperature("surface") }),
  format: { minutes: "0.0", core: "0", surface: "0" },
  equation: "{points} moments from 0 to the end of the bake: core as in CORETEMP, surface in the middle of the widest face",
  source: conductionSource(liquid),
  accuracy: `conduction alone: ${notInIt}`,
  cautions: ["oven"],
  worked: {
    typed: [0.75, 0.75, 5, 0.4, 3],
    gives: [
      ["minutes", "core", "surface"],
      [0, 70, 70],
      [23.0500683581, 160.909902, 169.301257],
      [46.1001367162, 190, 192.146671],
    ],
  },
  run: (given) => {
    refuseThick(given, given.thickest);
    const bake = baking(given, given);
    const slabs = slabsOf(given, given.ovenSurfaceCoefficient);
    const warmth = (share: number) => as<Quantity<"temperature">>(temperatureAt(given.oven, given.room, share));
    return Array.from({ length: given.points }, (_, i) => {
      const seconds = (bake * i) / (given.points - 1);
      return {
        minutes: as<Quantity<"minutes">>(seconds),
        core: warmth(atCore(slabs, seconds)),
        surface: warmth(atFace(slabs, given, seconds)),
      };
    });
  },
});
