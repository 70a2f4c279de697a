import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { resinDensity } from "../resin/settings";
import { wallGravity } from "../wood/voids";
import { allowance } from "./abreast";
import { holdDown } from "./settings";

/** Density of steel, kg/m³: from memory. */
export const steel = 7850;

/** Ballast in kg that holds a volume (m³) of a weight (kg) under the resin: Archimedes, with what it loses to buoyancy itself. */
export const ballastWeight = (volume: number, weight: number, ballastDensity: number, resinDensity: number, holdDown: number): number =>
  (holdDown * Math.max(0, resinDensity * volume - weight)) / (1 - resinDensity / ballastDensity);

/** Relative accuracy of a measured side, or of a density from a label. */
const measuring = 0.01;

const densityTwin = `IF({ballastDensity}=0,${steel},{ballastDensity})`;

/** Weight that holds pieces under: hold-down × (ρf V − m) / (1 − ρf/ρb). */
export const ballast = define({
  name: "BALLAST",
  per: "piece",
  asks: "How much weight holds the pieces under?",
  args: {
    solids: quantity("volume", "volume of the pieces", 104, [0.001, 1e6]),
    weight: quantity("weight", "weight of the pieces", 24, [1e-6, 1e6]),
    ballastDensity: optional(quantity("density", "density of the ballast", 7.85, [1, 23]), 7.85),
  },
  shop: { resinDensity, holdDown },
  returns: cell(quantity("weight", "ballast to put on top", 65.5)),
  format: "0.0",
  equation: "{holdDown} × ({resinDensity} × {solids} − {weight}) / (1 − {resinDensity}/{ballastDensity}), or 0 if the pieces sink",
  source:
    "Archimedes, exact; steel 7.85 g/cm³ and the resin's density from memory: the label decides; hold-down: common practice, no source",
  accuracy:
    "as good as the volume, weight and density; a resin density off by 1 % moves it by about 2 %. The likely range: three sides each measured to 1 %, and a density good to 1 %",
  cautions: ["ballast", "resin"],
  worked: { typed: [104, 24], gives: 65.46915246170451 },
  twin: unless(
    `OR({weight}>${wallGravity * 1000}*{solids}*(1+1E-9),${densityTwin}<={resinDensity}*(1+1E-9))`,
    `{holdDown}*MAX(0,{resinDensity}*{solids}-{weight})/(1-{resinDensity}/${densityTwin})`,
  ),
  steps: ({ solids, weight, resinDensity }) => ({
    "resin they push aside": said("weight", resinDensity * solids),
    lift: said("weight", Math.max(0, resinDensity * solids - weight)),
  }),
  trust: ({ solids, weight, ballastDensity, resinDensity, holdDown }) => {
    const at = (off: number) => ballastWeight(solids * (1 + 3 * off), weight, ballastDensity, resinDensity * (1 + off), holdDown);
    return [at(-measuring), at(measuring)];
  },
  run: ({ solids, weight, ballastDensity, resinDensity, holdDown }) => {
    if (weight > wallGravity * 1000 * solids * (1 + allowance)) throw badInput`weight is heavier than any wood: grams typed as ounces?`;
    if (ballastDensity <= resinDensity * (1 + allowance))
      throw badInput`ballast must be denser than the resin: ${said("density", ballastDensity)} is not above ${said("density", resinDensity)}`;
    return as(ballastWeight(solids, weight, ballastDensity, resinDensity, holdDown));
  },
});
