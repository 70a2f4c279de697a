import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { ovenSettings } from "./bake";
import { atCore } from "./block";
import { liquid } from "./filled";
import { atBest, atWorst, type Doubt, type Oven, slabsOf, temperatureAt, type Wood } from "./heating";
import { conductionSource, notInIt } from "./ovenwords";
import { pieceArgs, refuseThick } from "./piece";

const coreAt = (given: Wood & Oven & { minutes: number }, doubt?: Doubt): number => {
  const oven = given.oven - (doubt?.cooler ?? 0);
  return temperatureAt(oven, given.room, atCore(slabsOf(given, given.ovenSurfaceCoefficient, doubt), given.minutes));
};

/** Temperature at the middle of a piece after some minutes in the oven. */
export const coretemp = define({
  name: "CORETEMP",
  per: "piece",
  asks: "How hot is the core by then?",
  args: { minutes: quantity("minutes", "minutes in the oven", 30, [0, 1e6]), ...pieceArgs },
  shop: ovenSettings,
  returns: cell(quantity("temperature", "core temperature", 180, [-100, 300])),
  format: "0",
  equation: "{oven} − ({oven} − {room}) × share of the difference left at the core after {minutes}",
  source: conductionSource(liquid),
  accuracy: `conduction alone: ${notInIt}`,
  cautions: ["oven"],
  worked: { typed: [30, 0.75, 0.75, 5, 0.4], gives: 174.00491199710697 },
  trust: (given) => [coreAt(given, atWorst), coreAt(given, atBest)],
  run: (given) => {
    refuseThick(given, given.thickest);
    if (given.room >= given.oven)
      throw badInput`room must be cooler than the oven: ${said("temperature", given.room)} is not below ${said("temperature", given.oven)}`;
    return as(coreAt(given));
  },
});
