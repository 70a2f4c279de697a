import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { solidsArg } from "./fill";
import { areaOf, chamberArg } from "./section";

export const resinArg = quantity("fluid", "resin in the chamber", 1.14, [0, 1e6]);

/** Depth of the resin with the solids in it: (V + solids) / A. */
export const fluidLevel = define({
  name: "FLUIDLEVEL",
  per: "call",
  asks: "How deep will the resin be?",
  args: { chamber: chamberArg, resin: resinArg, solids: solidsArg },
  shop: {},
  returns: cell(quantity("length", "depth of resin", 6)),
  format: "0.00",
  equation: "({resin} + {solids}) / {area}",
  source: "geometry",
  accuracy: "exact for your measurements while everything is under the resin; the level falls as the wood takes resin up",
  cautions: ["chamber", "resin"],
  worked: { typed: [6, 1.14, 104], gives: 6.006684391113788 },
  twin: "({resin}+{solids})/(PI()*{chamber}^2/4)",
  steps: ({ chamber }) => ({ area: said("area", areaOf(chamber)) }),
  run: ({ chamber, resin, solids }) => as((resin + solids) / areaOf(chamber)),
});
