import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { airArgs, airDoubt, airPressure, airRange, airSettings, airSource, airStep } from "./air";
import { gaugeArg, pressureLeft } from "./gauge";
import { boilingPoint, leastSaturation } from "./saturation";

/** Temperature at which water boils in the chamber. */
export const waterBoils = define({
  name: "WATERBOILS",
  per: "piece",
  asks: "At what temperature does water boil in the chamber?",
  args: { gauge: gaugeArg, ...airArgs },
  shop: airSettings,
  returns: cell(quantity("temperature", "temperature at which water boils", 133)),
  format: "0",
  equation: "saturation temperature of water at {left}, which is {air} − {gauge}",
  source: `IAPWS-IF97 (R7-97, 2012), region 4, saturation-temperature equation; ${airSource}`,
  accuracy: `the equation is good to 0.05 °C between 0 and 100 °C, the pressure is not: near full vacuum a small error of the gauge moves the answer by many degrees; ${airDoubt}. Wet wood keeps bubbling above this temperature, and so may the resin itself: bubbles alone prove nothing`,
  cautions: ["chamber", "pump", "wet wood"],
  worked: { typed: [25], gives: 133.10347376506655 },
  steps: (given) => ({ ...airStep(given), left: said("pressure", pressureLeft(given.gauge, airPressure(given))) }),
  trust: (given) => {
    const [least, most] = airRange(given).map((air) => boilingPoint(Math.max(leastSaturation, air - given.gauge)));
    return [least, most];
  },
  run: (given) => {
    const left = pressureLeft(given.gauge, airPressure(given));
    if (left < leastSaturation * (1 - 1e-9)) throw noAnswer`water boils at any temperature above freezing`;
    return as(boilingPoint(left));
  },
});
