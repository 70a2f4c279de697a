import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { dyeRate } from "./settings";

/** Dye powder for a volume of resin: rate × resin. */
export const dye = define({
  name: "DYE",
  per: "piece",
  asks: "How much dye powder goes in?",
  args: { resin: quantity("fluid", "resin to color", 2, [0, 1e6]), rate: dyeRate },
  shop: {},
  returns: cell(quantity("powder", "dye powder", 0.5)),
  format: "0.00",
  equation: "{rate} × {resin}",
  source: "common practice, no source: 1/4 tsp to a quart, adjusted for intensity",
  accuracy: "a starting point: powders differ in strength, and a large piece comes out paler inside",
  cautions: ["resin", "dust"],
  worked: { typed: [2], gives: 0.5 },
  twin: "{rate}*{resin}",
  run: ({ resin, rate }) => as(rate * resin),
});
