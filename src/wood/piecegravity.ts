import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { weightArg } from "./moisture";
import { moistureShare, wallGravity } from "./voids";

/** Density of water, kg/m³, as the Wood Handbook takes it. */
const water = 1000;

/** Specific gravity of one piece, oven-dry weight on its volume as it is: weight / ((1 + moisture) volume × water). */
export const pieceGravity = define({
  name: "PIECEGRAVITY",
  per: "piece",
  asks: "How dense is this piece?",
  args: {
    weight: weightArg,
    volume: quantity("volume", "volume of the piece", 104, [0.001, 1e6]),
    moisture: optional(moistureShare, 0),
  },
  shop: {},
  returns: cell(quantity("gravity", "specific gravity of the piece", 0.37)),
  format: "0.00",
  equation: "{weight} / ((1 + {moisture}) × {volume} × 1000 kg/m³)",
  source: "Wood Handbook, FPL-GTR-282 (2021), ch. 4, eq. 4-14 solved for the specific gravity",
  accuracy:
    "1 % off in each of three sides is 3 % off in the answer; the volume is measured as the piece is now: damp wood comes out a little under its oven-dry gravity",
  cautions: [],
  worked: { typed: [24, 104, 0.08], gives: 0.36965684709138785 },
  twin: unless(`{weight}>${wallGravity}*(1+1E-9)*(1+{moisture})*{volume}*1000`, "{weight}/((1+{moisture})*{volume}*1000)"),
  run: ({ weight, volume, moisture }) => {
    const gravity = weight / ((1 + moisture) * volume * water);
    if (gravity > wallGravity * (1 + 1e-9))
      throw badInput`specific gravity comes to ${said("gravity", gravity)}, over the ${said("gravity", wallGravity)} of solid cell wall: check weight and volume and their units, grams typed as ounces?`;
    return as(gravity);
  },
});
