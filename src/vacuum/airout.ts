import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { airArgs, airDoubt, airPressure, airRange, airSettings, airSource, airStep, airTwin } from "./air";
import { gaugeArg, highPressureDay, pressureLeft } from "./gauge";

/** Share of the air drawn from the pores: gauge / air pressure. */
export const airOut = define({
  name: "AIROUT",
  per: "piece",
  asks: "How much of the air is out of the pores?",
  args: { gauge: gaugeArg, ...airArgs },
  shop: airSettings,
  returns: cell(quantity("share", "share of the air drawn out", 0.8355)),
  format: "0%",
  equation: "{gauge} / {air}, at most 1",
  source: `Boyle's law, exact for the air that can leave; ${airSource}`,
  accuracy: `at most this much: closed pores keep their air, and water or resin vapor takes its place; ${airDoubt}`,
  cautions: ["chamber", "pump"],
  worked: { typed: [25], gives: 0.8355264348238343 },
  twin: `IF(ABS({gauge})>${airTwin}+${highPressureDay},NA(),MIN(1,ABS({gauge})/${airTwin}))`,
  steps: airStep,
  trust: (given) => {
    const [least, most] = airRange(given);
    return [Math.min(1, given.gauge / most), Math.min(1, given.gauge / least)];
  },
  run: (given) => {
    const air = airPressure(given);
    return as(1 - pressureLeft(given.gauge, air) / air);
  },
});
