import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { dryWeightArg, weightArg } from "./moisture";
import { moistureShare } from "./voids";

/** Weight without any water: weight / (1 + moisture). */
export const dryWeight = define({
  name: "DRYWEIGHT",
  per: "piece",
  asks: "What will it weigh when dry?",
  args: { weight: weightArg, moisture: moistureShare },
  shop: {},
  returns: cell(dryWeightArg),
  format: "0.0",
  equation: "{weight} / (1 + {moisture})",
  source: "Wood Handbook, FPL-GTR-282 (2021), eq. 4-2 solved for the dry weight",
  accuracy: "as good as the moisture: a hand meter is off by 1 or 2 % moisture (from memory), and by more in punky wood",
  cautions: ["wet wood"],
  worked: { typed: [104, 0.12], gives: 92.85714285714286 },
  twin: "{weight}/(1+{moisture})",
  run: ({ weight, moisture }) => as(weight / (1 + moisture)),
});
