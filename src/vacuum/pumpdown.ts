import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { type Air, airArgs, airPressure, airSettings, airSource, airStep, airTwin, deepest } from "./air";
import { gaugeArg } from "./gauge";
import { pumpEndPressure } from "./settings";

export const chamberVolume = quantity("fluid", "inside volume of the chamber", 10, [0.001, 1e6]);
export const pumpRate = quantity("flow", "rate of the pump or venturi", 2.5, [0.001, 1e5]);

interface Pump {
  readonly volume: number;
  readonly rate: number;
  readonly gauge: number;
  readonly pumpEndPressure: number;
}

function seconds(given: Air & Pump): number {
  const air = airPressure(given);
  const most = deepest(air, given.pumpEndPressure);
  if (given.gauge >= most * (1 - 1e-9))
    throw noAnswer`the pump does not reach ${said("pressure", given.gauge)}: by its end pressure its gauge stays short of ${said("pressure", most)} here`;
  return (given.volume / given.rate) * Math.log(most / (most - given.gauge));
}

/** Minutes to draw an empty chamber to a gauge reading: (V/S) ln((p0 − pe) / (p − pe)). */
export const pumpDown = define({
  name: "PUMPDOWN",
  per: "piece",
  asks: "How long does the pump take?",
  args: {
    volume: chamberVolume,
    rate: pumpRate,
    gauge: gaugeArg,
    ...airArgs,
  },
  shop: { ...airSettings, pumpEndPressure },
  returns: cell(quantity("minutes", "minutes to reach the gauge, empty chamber", 0.24)),
  format: "0.0",
  equation: "{volume} / {rate} × ln(({air} − {pumpEndPressure}) / ({air} − {gauge} − {pumpEndPressure}))",
  source: `vacuum-technology textbooks: constant pumping speed, no leak; ${airSource}`,
  accuracy:
    "at least this long: the rate on the plate is the one at full air pressure, and below about 0.3 inHg (10 mbar) left, vapor from wood, water and resin decides",
  cautions: ["chamber", "pump"],
  worked: { typed: [10, 2.5, 25], gives: 0.24359097394530296 },
  twin: unless(
    `ABS({gauge})>=(${airTwin}-{pumpEndPressure})*(1-1E-9)`,
    `{volume}/{rate}*LN((${airTwin}-{pumpEndPressure})/(${airTwin}-ABS({gauge})-{pumpEndPressure}))`,
  ),
  steps: airStep,
  trust: (given) => [seconds(given), undefined],
  run: (given) => as(seconds(given)),
});
