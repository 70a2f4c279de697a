import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";

export const weightArg = quantity("weight", "weight", 104, [1e-6, 1e6]);
export const dryWeightArg = quantity("weight", "oven-dry weight", 93, [1e-6, 1e6]);

/** Moisture content on the oven-dry basis, a share (0.12 is 12 %): (weight − dry weight) / dry weight. */
export const moisture = define({
  name: "MOISTURE",
  per: "piece",
  asks: "How much water is in the wood?",
  args: { weight: weightArg, dryWeight: dryWeightArg },
  returns: cell(quantity("share", "moisture, oven-dry basis", 0.118279569892473)),
  format: "0.0%",
  equation: "({weight} − {dryWeight}) / {dryWeight}",
  source: "Wood Handbook, FPL-GTR-282 (2021), eq. 4-2; the same basis as ASTM D4442",
  accuracy: "exact for the weights given; an oven-dried sample counts as free of water",
  cautions: ["wet wood"],
  worked: { typed: [104, 93], gives: 0.118279569892473 },
  twin: unless("{weight}<{dryWeight}*(1-1E-9)", "MAX(0,{weight}-{dryWeight})/{dryWeight}"),
  run: ({ weight, dryWeight }) => {
    if (weight < dryWeight) {
      if (weight < dryWeight * (1 - 1e-9)) throw badInput`weight is lighter than when dry: weigh again`;
      return as(0);
    }
    return as((weight - dryWeight) / dryWeight);
  },
});
