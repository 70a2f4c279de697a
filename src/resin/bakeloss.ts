import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { beforeArg, curedArg, drainedArg, gained } from "./weights";

/** Share of the resin that left the piece in the oven: (drained − cured) / (drained − before). */
export const bakeloss = define({
  name: "BAKELOSS",
  per: "piece",
  asks: "How much resin was lost in the oven?",
  args: { before: beforeArg, drained: drainedArg, cured: curedArg },
  returns: cell(quantity("share", "share of the resin lost in the oven", 0.12)),
  format: "0%",
  equation: "({drained} − {cured}) / ({drained} − {before})",
  source: "arithmetic of three weighings; common practice, no source",
  accuracy: "exact for the weights given; drips and vapor count together, and water left in the wood counts as resin",
  cautions: ["oven", "dust"],
  worked: { typed: [24, 49, 46], gives: 0.12 },
  twin: unless(
    "OR({drained}<={before},{cured}<{before}*(1-1E-9),{cured}>{drained}*(1+1E-9))",
    "MIN(1,MAX(0,{drained}-{cured})/({drained}-{before}))",
  ),
  run: ({ before, drained, cured }) => {
    const resin = gained(drained, before, "weight drained is lighter than before");
    if (resin === 0) throw badInput`weight drained is no more than before: there is no resin to lose`;
    gained(cured, before, "weight cured is lighter than before");
    return as(Math.min(1, gained(drained, cured, "weight cured is heavier than drained") / resin));
  },
});
