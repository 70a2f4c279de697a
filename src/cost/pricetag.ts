import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { amount, decimal, inCents } from "../../shared/money";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";

/** Price that leaves a margin, a share of the price itself. */
export const pricetag = define({
  name: "PRICETAG",
  per: "piece",
  asks: "What should I charge?",
  args: {
    cost: quantity("money", "cost", 10, [0, 1e12]),
    margin: quantity("share", "margin on the price", 0.5, [0, 0.9999]),
  },
  returns: cell(quantity("money", "price to charge", 20)),
  format: "0.00",
  equation: "{cost} / (1 − {margin}), to the cent",
  source: "arithmetic in decimals; a 50 % margin doubles the cost, while a 50 % markup adds half of it",
  accuracy: "exact to the cent for the numbers given; half a cent rounds away from zero",
  cautions: [],
  worked: { typed: [10, 0.5], gives: 20 },
  twin: "ROUND({cost}/(1-{margin}),2)",
  run: ({ cost, margin }) => as(amount(inCents(decimal(cost).div(decimal(1).minus(decimal(margin)))))),
});
