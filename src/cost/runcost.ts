import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { amount, decimal, inCents } from "../../shared/money";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { besides, type Standing, standing } from "./sidebyside";

/** Credits and goods taken back count with a minus sign. */
const each = [-1e12, 1e12] as const;

/** Every line rounded to the cent, as a bill has it. */
const billed = (quantities: Standing, prices: Standing) =>
  besides(quantities, prices).map(([many, price]) => inCents(decimal(many).times(decimal(price))));

/** What a run costs: quantities times prices, line by line. */
export const runcost = define({
  name: "RUNCOST",
  per: "call",
  asks: "What does the run cost?",
  args: {
    quantities: standing("quantities", quantity("number", "quantity", 2, each)),
    prices: standing("prices", quantity("money", "price", 24.5, each)),
  },
  returns: cell(quantity("money", "cost of the run", 62.02)),
  format: "0.00",
  equation: "sum of quantity × price over the lines, each rounded to the cent",
  source: "arithmetic in decimals; a half cent rounds away from zero, as spreadsheets' ROUND does",
  accuracy: "exact to the cent for the numbers given",
  cautions: [],
  worked: {
    typed: [
      [2, 3, 0.25],
      [24.5, 4.33, 0.1],
    ],
    gives: 62.02,
  },
  steps: ({ quantities, prices }) => ({ "lines that count": String(billed(quantities, prices).length) }),
  run: ({ quantities, prices }) => as(amount(billed(quantities, prices).reduce((sum, line) => sum.plus(line), decimal(0)))),
});
