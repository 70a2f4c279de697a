import { ask, fault } from "../../ask";
import published from "../../published/cost.json";

const rows = published.flatMap((row) => (row.quantities ? [{ ...row, expected: row.expected as unknown as number }] : []));

describe("RUNCOST", () => {
  it.each(rows)("$quantities at $prices cost $expected ($source)", ({ quantities, prices, expected }) =>
    expect(ask("RUNCOST", quantities, prices!)).toBe(expected),
  );

  it("takes rows, columns and blocks, side by side or across", () => {
    expect(ask("RUNCOST", [[2, 3]], [[4, 5]])).toBe(23);
    expect(ask("RUNCOST", [[2, 3]], [4, 5])).toBe(23);
    expect(
      ask(
        "RUNCOST",
        [
          [2, 3],
          [1, 1],
        ],
        [4, 5, 6, 7],
      ),
    ).toBe(36);
    expect(ask("RUNCOST", 2, 4)).toBe(8);
  });

  it("passes over headings and gaps, and over a blank that arrives as zero", () => {
    expect(ask("RUNCOST", ["Quantity", 2, "", null, 3, "total", ""], ["Price", 4, "", null, 5, "", "paid"])).toBe(23);
    expect(ask("RUNCOST", [2, 0, 0, 3], [4, "resin", 0, 5])).toBe(23);
  });

  it("reads numbers typed as text", () => expect(ask("RUNCOST", ["2", " 3 "], ["4.5", 5])).toBe(24));

  it("shows nothing while nothing is filled in, and 0 where only headings stand", () => {
    expect(ask("RUNCOST", ["", ""], ["", ""])).toBe("");
    expect(ask("RUNCOST", ["Quantity", ""], ["Price", ""])).toBe(0);
  });

  it.each([
    ["a blank price beside a quantity", [2, 3], [4, ""], "cell 2: price is missing: type a value such as 24.5"],
    ["a blank quantity beside a price", ["", 3], [4, 5], "cell 1: quantity is missing: type a value such as 2"],
    ["a word beside a number", [2, 3], [4, "dear"], "cell 2: price: “dear” is not a number: type a value such as 24.5"],
    ["a unit", [2, "3 qt"], [4, 5], "cell 2: quantity: “3 qt” has a unit: type a number without one"],
    ["a currency sign", [2, 3], [4, "$5.00"], "cell 2: price: “$5.00” is text: type the amount as a number, without a currency sign"],
    [
      "a currency sign, whatever stands beside it",
      ["two", 3],
      ["5 €", 5],
      "cell 1: price: “5 €” is text: type the amount as a number, without a currency sign",
    ],
    [
      "a comma",
      [2],
      ["4,50"],
      "cell 1: price: “4,50” has a comma, which can be read two ways: type 4.50 with a decimal point, or leave the comma out",
    ],
    ["TRUE", [2], [true], "cell 1: price: “TRUE” is not a number: type a value such as 24.5"],
    ["different lengths", [2, 3, 4], [5, 6], "quantities are 3 cells and prices 2: give the same number of each"],
    ["a number out of range", [1e13], [5], "cell 1: quantity must be from -1000000000000 to 1000000000000: 10000000000000 is outside"],
    ["an amount past all cents", [1e9, 1], [1e9, 1], "the amounts are too large to work out to the cent: check them"],
  ])("refuses %s", (_, quantities, prices, message) => expect(fault("RUNCOST", quantities, prices)).toEqual({ error: "#VALUE!", message }));

  it("says which argument is missing", () =>
    expect(fault("RUNCOST", [2]).message).toBe("prices is missing: type cells with prices, each a value such as 24.5"));

  it("hands an error on, wherever it stands", () => {
    const handed = { error: "#REF!", message: "" } as const;
    expect(ask("RUNCOST", [2, ""], [4, handed])).toEqual(handed);
  });
});
