import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { weightArg } from "./moisture";
import { moistureShare } from "./voids";

/** Weight at which drying has come to a target: weight × (1 + target) / (1 + moisture). */
export const stopWeight = define({
  name: "STOPWEIGHT",
  per: "piece",
  asks: "At what weight do I stop drying?",
  args: { weight: weightArg, moisture: moistureShare, target: quantity("share", "moisture to dry to", 0.08, [0, 3]) },
  shop: {},
  returns: cell(quantity("weight", "weight at which to stop drying", 100)),
  format: "0.0",
  equation: "{weight} × (1 + {target}) / (1 + {moisture})",
  source: "Wood Handbook, FPL-GTR-282 (2021), eq. 4-2 for both moistures of one dry weight",
  accuracy: "as good as the moisture at the start: a hand meter is off by 1 or 2 % moisture (from memory), and by more in punky wood",
  cautions: ["wet wood"],
  worked: { typed: [253.4, 0.185, 0.1], gives: 235.2236286919831 },
  twin: unless("{target}>={moisture}*(1-1E-9)", "{weight}*(1+{target})/(1+{moisture})"),
  run: ({ weight, moisture, target }) => {
    if (target >= moisture * (1 - 1e-9))
      throw badInput`the wood is already drier, or just as dry: its moisture of ${said("share", moisture)} is not above the target of ${said("share", target)}`;
    return as((weight * (1 + target)) / (1 + moisture));
  },
});
