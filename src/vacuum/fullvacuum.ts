import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { airArgs, airDoubt, airPressure, airRange, airSettings, airSource, airStep, airTwin, deepest } from "./air";
import { pumpEndPressure } from "./settings";

/** The deepest gauge reading to expect: air pressure − pump end pressure. */
export const fullVacuum = define({
  name: "FULLVACUUM",
  per: "piece",
  asks: "What is the deepest vacuum here?",
  args: airArgs,
  shop: { ...airSettings, pumpEndPressure },
  returns: cell(quantity("pressure", "deepest gauge reading to expect", 29.82)),
  format: "0.0",
  equation: "{air} − {pumpEndPressure}",
  source: `${airSource}; pump end pressure from memory: the pump's plate decides`,
  accuracy: `${airDoubt}; a dial is off by 2 or 3 % of its span (from memory); wet wood and resin vapor hold a pump above its end pressure`,
  cautions: ["chamber", "pump"],
  worked: { typed: [5280], gives: 24.537387473743358 },
  twin: unless(`{pumpEndPressure}>=${airTwin}`, `${airTwin}-{pumpEndPressure}`),
  steps: airStep,
  trust: (given) => {
    const [least, most] = airRange(given);
    return [Math.max(0, least - given.pumpEndPressure), most - given.pumpEndPressure];
  },
  run: (given) => as(deepest(airPressure(given), given.pumpEndPressure)),
});
