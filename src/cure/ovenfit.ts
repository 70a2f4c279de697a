import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, noAnswer, said, sentence } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { fullness } from "../resin/settings";
import { atCore } from "./block";
import { cured, type Filled } from "./filled";
import { slabsOf, type Wood } from "./heating";
import { conductionSource } from "./ovenwords";
import { pieceArgs } from "./piece";
import { oven, room } from "./settings";

/** W/m²K between which an oven's surface coefficient is looked for. */
const least = 1;
const most = 500;
const whisker = 1e-9;

interface Reading extends Wood {
  readonly minutes: number;
  readonly core: number;
  readonly oven: number;
  readonly room: number;
}

/** Surface coefficient at which the core comes to a share of the oven's lead in the time it took; undefined where none from 1 to 500 does. */
function fitted(given: Reading, k: keyof Filled = "k"): number | undefined {
  const { minutes, core, oven, room } = given;
  const target = (oven - core) / (oven - room);
  const left = (h: number) => atCore(slabsOf(given, h, { k, h: 1, cooler: 0 }, cured), minutes);
  if (!(target < 1) || !(target > 0) || left(least) < target * (1 - whisker) || left(most) > target * (1 + whisker)) return undefined;
  // The share left falls as h rises: halve the interval of its logarithm until it is a point.
  let [low, high] = [Math.log(least), Math.log(most)];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (left(Math.exp(middle)) > target) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

const measuring = sentence`How to measure: drill a hole to the middle of a cured, dry blank, put the thermometer in, place it in the hot oven the way you place your pieces, and read minutes and core while the core is still rising. Never use a piece with uncured resin: its own heat would pass for the oven's.`;

/** The surface coefficient of an oven, from one core temperature in a dummy blank. */
export const ovenfit = define({
  name: "OVENFIT",
  per: "piece",
  asks: "How well does my oven heat a piece?",
  args: {
    minutes: quantity("minutes", "minutes in the oven when the core was read", 30, [0.1, 1e5]),
    core: quantity("temperature", "core temperature read then", 175, [0, 300]),
    ...pieceArgs,
  },
  shop: { oven, room, fullness },
  returns: cell(quantity("coefficient", "oven surface coefficient, for My Shop", 7.2)),
  format: "0.0",
  equation: "the surface coefficient at which a dry, cured dummy blank at {room} reaches {core} in {minutes} in an oven at {oven}",
  source: `${conductionSource(cured)}; solved for the surface coefficient`,
  accuracy:
    "as good as the thermometer: 2 °F at the core moves it by a tenth or more. The range comes from how well filled wood conducts heat. It holds for this oven and this way of placing pieces: measure again for foil, spaced pieces or a fan",
  cautions: ["oven"],
  worked: { typed: [30, 175, 0.75, 0.75, 5, 0.4], gives: 7.248329405657317 },
  trust: (given) => [fitted(given, "most"), fitted(given, "least")],
  before: measuring,
  beside: () => [measuring],
  run: (given) => {
    const { minutes, core, oven, room } = given;
    if (room >= oven)
      throw badInput`room must be cooler than the oven: ${said("temperature", room)} is not below ${said("temperature", oven)}`;
    const h = fitted(given);
    if (h === undefined)
      throw noAnswer`no surface coefficient from ${least} to ${most} W/m²K explains ${said("temperature", core)} after ${said("minutes", minutes)} in an oven at ${said("temperature", oven)}: check the thermometers, and read the core while it is still rising`;
    return as(h);
  },
});
