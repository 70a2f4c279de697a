import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, noAnswer, said } from "../../shared/outcome";
import { cell } from "../../shared/result";
import { column } from "../../shared/whole";
import { truth } from "../../shared/words";
import { scaleStep } from "./settings";

/** EN 13183-1: constant is a change of at most 0.1 % over 2 hours. */
const interval = 2 * 3600;
const change = 0.001;
const whisker = 1e-9;

interface Weighing {
  readonly weight: number;
  /** Seconds since the first weighing. */
  readonly at: number;
}

type Column = readonly (number | undefined)[];

/** Weighings in their order; without hours each is taken as two hours after the one before. A weight of 0 is a blank cell. */
function weighings(weights: Column, hours: Column | undefined): Weighing[] {
  const timed = hours?.some((hour) => hour !== undefined) ? hours : undefined;
  if (timed && timed.length !== weights.length)
    throw badInput`hours has ${timed.length} cells and weights has ${weights.length}: give each weighing its hours, or leave hours out`;
  const found: Weighing[] = [];
  weights.forEach((weight, i) => {
    if (!weight) return;
    const at = timed ? timed[i] : found.length * interval;
    if (at === undefined) throw badInput`hours, cell ${i + 1}: the time of this weighing is missing: type the hours since the first`;
    if (found.length && at <= found.at(-1)!.at) throw badInput`hours, cell ${i + 1}: each weighing must be later than the one before it`;
    found.push({ weight, at });
  });
  return found;
}

const again = () => noAnswer`weigh again in 2 hours`;

const allowedOf = ({ weight }: Weighing): number => change * weight * (1 + whisker);

/**
 * The last weighing, and the latest one at least two hours before it; where all came sooner, the first of them if the wood
 * lost too much since: it would lose more in two hours.
 */
function lastTwo(given: { weights: Column; hours?: Column }): { last: Weighing; before: Weighing } {
  const all = weighings(given.weights, given.hours);
  const last = all.at(-1);
  if (!last || all.length < 2) throw again();
  const before = all.findLast(({ at }) => last.at - at >= interval * (1 - whisker)) ?? all[0];
  const isSoon = last.at - before.at < interval * (1 - whisker);
  if (isSoon && before.weight - last.weight <= allowedOf(last)) throw again();
  return { last, before };
}

/** TRUE when the oven takes no more water out of the wood. */
export const isDry = define({
  name: "ISDRY",
  per: "call",
  asks: "Is it dry?",
  args: {
    weights: column(quantity("weight", "weighing", 93, [0, 1e6])),
    hours: optional(column(quantity("hours", "hours since the first weighing", 2, [0, 1e5]))),
  },
  shop: { scaleStep },
  returns: cell(truth("weight is constant", true)),
  format: "General",
  equation: "{change} of {last} over {between} is at most 0.1 % over 2 h or more",
  source: "EN 13183-1: 0.1 % of the dry weight in 2 h at 103 ± 2 °C (217 °F), wording read in a public guide",
  accuracy:
    "it says that the weight no longer changes in this oven: below 214 °F (101 °C) some water stays in, and a piece that was soaked in resin loses more than water; without hours the weighings count as 2 h or more apart",
  cautions: ["wet wood", "oven"],
  worked: { typed: [[93.4, 93.1, 93.05], [0, 2, 4], [["scale step", "0.05 g"]]], gives: true },
  steps: (given) => {
    const { last, before } = lastTwo(given);
    return {
      change: said("share", Math.abs(before.weight - last.weight) / last.weight),
      last: said("weight", last.weight),
      between: said("hours", last.at - before.at),
    };
  },
  run: ({ weights, hours, scaleStep }) => {
    const { last, before } = lastTwo({ weights, hours });
    const allowed = allowedOf(last);
    if (scaleStep > allowed) throw noAnswer`the scale is too coarse for this: weigh several pieces together`;
    return Math.abs(before.weight - last.weight) <= allowed;
  },
});
