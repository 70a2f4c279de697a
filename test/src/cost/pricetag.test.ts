import * as fc from "fast-check";
import { ask, fault, spill } from "../../ask";
import published from "../../published/cost.json";

const rows = published.flatMap((row) => (row.margin === undefined ? [] : [{ ...row, margin: row.margin, cost: row.cost! }]));

describe("PRICETAG", () => {
  it.each(rows)("$cost at a margin of $margin asks $expected ($source)", ({ cost, margin, expected }) =>
    expect(ask("PRICETAG", cost, margin)).toBe(expected),
  );

  it("is a margin on the price, not a markup on the cost: 50 % on 10 is 20", () => expect(ask("PRICETAG", 10, "50 %")).toBe(20));

  it("leaves the margin asked for, within the cent", () =>
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), fc.double({ min: 0, max: 0.95, noNaN: true }), (cost, margin) => {
        const price = ask("PRICETAG", cost, margin) as number;
        expect(Math.abs(price * (1 - margin) - cost)).toBeLessThanOrEqual(0.005 + cost * 1e-12);
        expect(Math.abs(price * 100 - Math.round(price * 100))).toBeLessThan(1e-6);
      }),
    ));

  it("answers a column", () => expect(spill("PRICETAG", [10, "", 5], 0.5)).toEqual([[20], [""], [10]]));

  it.each([
    [10, 50, "margin on the price: 50 means 5000 %: type 50 % or 0.5"],
    [10, 1, "margin on the price must be from 0 % to 99.99 %: 100 % is outside"],
    [-1, 0.5, "cost must be from 0 to 1000000000000: -1 is outside"],
    ["£10", 0.5, "cost: “£10” is text: type the amount as a number, without a currency sign"],
    [1e12, 0.9999, "the amounts are too large to work out to the cent: check them"],
  ])("refuses %s at %s in words", (cost, margin, message) =>
    expect(fault("PRICETAG", cost, margin)).toEqual({ error: "#VALUE!", message }),
  );
});
