import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, noAnswer, said, sentence, type Trouble } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { row } from "../../shared/result";
import { unless } from "../../shared/twin";
import { type Air, airArgs, airPressure, airSettings, airSource, airStep, airTwin, deepest } from "./air";
import { gaugeArg, highPressureDay, pressureLeft } from "./gauge";
import { chamberVolume, pumpRate } from "./pumpdown";
import { pumpEndPressure } from "./settings";

interface Readings extends Air {
  readonly volume: number;
  readonly before: number;
  readonly after: number;
  readonly minutes: number;
  readonly rate?: number;
  readonly pumpEndPressure: number;
}

const same = 1e-9;

/** Vacuum lost in a second with the pump shut off: Δp/Δt. */
function loss(given: Readings): number {
  const air = airPressure(given);
  const fall = pressureLeft(given.after, air) - pressureLeft(given.before, air);
  if (fall < -same * given.before)
    throw badInput`gauge after shows more vacuum than before, ${said("pressure", given.after)} and ${said("pressure", given.before)}: shut the pump off and read both again`;
  return Math.max(0, fall) / given.minutes;
}

/** The deepest gauge that the pump reaches against the leak: where it takes out as much air as leaks in, Q/S above its end pressure. */
function reached(given: Readings, rate: number): Quantity<"pressure"> | Trouble {
  const left = deepest(airPressure(given), given.pumpEndPressure) - (loss(given) * given.volume) / rate;
  return left > 0
    ? as(left)
    : noAnswer`the leak lets in as much air as the pump takes out: find it at lid, valves and hoses before you pump again`;
}

const lossTwin = "MAX(0,ABS({before})-ABS({after}))/{minutes}";
const deepestTwin = `(${airTwin}-{pumpEndPressure}-${lossTwin}*{volume}/{rate})`;
const noReading = `OR(ABS({before})>(${airTwin}+${highPressureDay})*(1+1E-9),ABS({after})>ABS({before})*(1+1E-9))`;

/** How fast the chamber leaks, and what that leaves of the vacuum. */
export const leak = define({
  name: "LEAK",
  per: "call",
  asks: "Does my chamber leak?",
  args: {
    volume: chamberVolume,
    before: { ...gaugeArg, label: "gauge as the pump is shut off" },
    after: { ...gaugeArg, label: "gauge some minutes later" },
    minutes: quantity("minutes", "minutes between the two", 10, [0.01, 1e5]),
    rate: optional(pumpRate),
    ...airArgs,
  },
  shop: { ...airSettings, pumpEndPressure },
  returns: row({
    loss: quantity("leakage", "vacuum lost with the pump shut off", 0.1),
    reached: quantity("pressure", "deepest gauge that the pump reaches against it", 29.8),
  }),
  format: { loss: "0.000", reached: "0.0" },
  equation: "loss = ({before} − {after}) / {minutes}; deepest gauge = {air} − {pumpEndPressure} − loss × {volume} / {rate}",
  source: `gas throughput balance as in vacuum practice: Q = V Δp/Δt, end pressure = pump end pressure + Q/S (40 CFR 1065.244 and 1065.644 check leaks alike); ${airSource}`,
  accuracy:
    "as good as the dial: a fall of one mark in ten minutes is hard to read, so wait longer. Measure an empty, dry chamber. Read a second pair right after: if it falls less, that is wet wood or resin giving off vapor, not a leak, because a leak keeps its pace",
  cautions: ["chamber", "pump"],
  worked: { typed: [10, 29, 28, 10, 2.5], gives: [0.1, 29.807887524192918] },
  steps: airStep,
  beside: () => [sentence`A second pair of readings that falls less is outgassing or wet wood, not a leak.`],
  twin: {
    loss: unless(noReading, lossTwin),
    reached: `IF({rate}=0,"",${unless(`OR(${noReading},${deepestTwin}<=0)`, deepestTwin)})`,
  },
  run: (given) => ({
    loss: as<Quantity<"leakage">>(loss(given)),
    reached: given.rate === undefined ? undefined : reached(given, given.rate),
  }),
});
