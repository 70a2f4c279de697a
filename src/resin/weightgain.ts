import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { beforeArg, curedArg, gained } from "./weights";

/** Weight gain of a cured piece: (cured − before) / before. */
export const weightgain = define({
  name: "WEIGHTGAIN",
  per: "piece",
  asks: "How much heavier did the wood get?",
  args: { before: beforeArg, cured: curedArg },
  returns: cell(quantity("share", "weight gain", 0.917)),
  format: "0%",
  equation: "({cured} − {before}) / {before}",
  source: "the weight percentage gain of wood modification, as in Wood Science and Technology (2017), doi 10.1007/s00226-017-0933-6",
  accuracy: "exact for the weights given, oven-dry before and cool after; water left in the wood hides that much resin",
  cautions: ["oven", "dust"],
  worked: { typed: [24, 46], gives: 0.9166666666666667 },
  twin: unless("{cured}<{before}*(1-1E-9)", "MAX(0,{cured}-{before})/{before}"),
  run: ({ before, cured }) => as(gained(cured, before, "weight cured is lighter than before") / before),
});
