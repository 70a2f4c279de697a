import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { resinDensity } from "./settings";

const same = 1e-9;

/** Resin in a tub by its weight: (gross − tare) / density. */
export const intub = define({
  name: "INTUB",
  per: "piece",
  asks: "How much is left in the tub?",
  args: {
    gross: quantity("weight", "tub with the resin in it", 60, [0, 1e6]),
    tare: quantity("weight", "the same tub empty", 20, [0, 1e6]),
  },
  shop: { resinDensity },
  returns: cell(quantity("fluid", "resin left", 1.16)),
  format: "0.00",
  equation: "({gross} − {tare}) / {resinDensity}",
  source: "weight over density; the resin's density from memory: the label decides",
  accuracy: "as good as the density: 1 % of it is 1 % of the answer. Pieces and ballast must be out of the tub",
  cautions: ["resin", "storage"],
  worked: { typed: [60, 20], gives: 1.163363372008705 },
  twin: unless("{gross}<{tare}*(1-1E-9)", "MAX(0,{gross}-{tare})/{resinDensity}"),
  run: ({ gross, tare, resinDensity }) => {
    if (gross < tare * (1 - same))
      throw badInput`tub with the resin in it is lighter than the empty tub: weigh both again, with the same lid on`;
    return as(Math.max(0, gross - tare) / resinDensity);
  },
});
