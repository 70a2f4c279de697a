import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { solidsArg } from "./fill";
import { areaOf, chamberArg } from "./section";

export const fluidArg = quantity("fluid", "resin in the chamber", 1.14, [0, 1e6]);

/** Depth of the resin with the solids in it: (V + solids) / A. */
export const fluidLevel = define({
  name: "FLUIDLEVEL",
  per: "call",
  asks: "How high will the resin stand?",
  args: { chamber: chamberArg, fluid: fluidArg, solids: solidsArg },
  shop: {},
  returns: cell(quantity("length", "depth of resin", 6)),
  format: "0.00",
  equation: "({fluid} + {solids}) / {area}",
  source: "geometry",
  accuracy: "exact for the measures taken, while all the solids are under; it falls as the wood takes resin up",
  cautions: ["chamber", "resin"],
  worked: { typed: [6, 1.14, 104], gives: 6.006684391113788 },
  twin: "({fluid}+{solids})/(PI()*{chamber}^2/4)",
  steps: ({ chamber }) => ({ area: said("area", areaOf(chamber)) }),
  run: ({ chamber, fluid, solids }) => as((fluid + solids) / areaOf(chamber)),
});
