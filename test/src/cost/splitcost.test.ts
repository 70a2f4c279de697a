import * as fc from "fast-check";
import { decimal } from "../../../shared/money";
import { apportion } from "../../../src/cost/splitcost";
import { ask, fault, spill } from "../../ask";
import published from "../../published/cost.json";

const rows = published.flatMap((row) =>
  row.weights ? [{ ...row, total: row.total!, weights: row.weights, expected: row.expected as unknown as number[] }] : [],
);

const summed = (shares: readonly unknown[]) =>
  shares
    .reduce((sum: ReturnType<typeof decimal>, share) => (typeof share === "number" ? sum.plus(decimal(share)) : sum), decimal(0))
    .toNumber();

describe("SPLITCOST", () => {
  it.each(rows)("$total by $weights is $expected ($source)", ({ total, weights, expected }) =>
    expect(spill("SPLITCOST", total, weights).flat()).toEqual(expected),
  );

  it("rounds the total to the cent first", () => expect(spill("SPLITCOST", 0.025, [1, 1]).flat()).toEqual([0.02, 0.01]));

  it("splits a credit as it splits a cost", () => expect(spill("SPLITCOST", -100, [1, 1, 1]).flat()).toEqual([-33.34, -33.33, -33.33]));

  it("has the shape of the weights, and leaves blanks blank", () => {
    expect(spill("SPLITCOST", 9, [[1, "", 2]])).toEqual([[3, "", 6]]);
    expect(
      spill("SPLITCOST", 9, [
        [1, 2],
        ["", 0],
      ]),
    ).toEqual([
      [3, 6],
      ["", 0],
    ]);
    expect(spill("SPLITCOST", 9, 4)).toEqual([[9]]);
  });

  const weight = fc.oneof(
    fc.double({ min: 0, max: 1e12, noNaN: true }),
    fc.double({ min: 0, max: 1e-300, noNaN: true }),
    fc.constantFrom(0, 1, 1 / 3, 1e12, 5e-324, Number.MIN_VALUE * 3, 0.1, 0.7),
  );
  const weights = fc.array(weight, { minLength: 1, maxLength: 40 }).filter((all) => all.some((w) => w > 0));
  const total = fc.oneof(
    fc.integer({ min: -(10 ** 12), max: 10 ** 12 }).map((cents) => cents / 100),
    fc.double({ min: -1e9, max: 1e9, noNaN: true }),
  );

  it("adds up to the total to the cent for any weights, huge and tiny, and is never a cent away from the exact part", () =>
    fc.assert(
      fc.property(total, weights, (whole, parts) => {
        const shares = spill("SPLITCOST", whole, parts).flat() as number[];
        const rounded = decimal(whole).toDecimalPlaces(2, 4);
        expect(summed(shares)).toBe(rounded.toNumber() + 0);
        const sum = parts.reduce((all, part) => all.plus(decimal(part)), decimal(0));
        shares.forEach((share, i) => {
          const exact = rounded.times(decimal(parts[i])).div(sum);
          expect(decimal(share).minus(exact).abs().toNumber()).toBeLessThan(0.01 + 1e-12);
        });
      }),
      { numRuns: 300 },
    ));

  it("gives more to a larger weight, and to the first of equal ones", () =>
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 6n }),
        fc.array(fc.bigInt({ min: 1n, max: 50n }), { minLength: 2, maxLength: 12 }),
        (whole, parts) => {
          const shares = apportion(whole, parts);
          for (let i = 0; i < parts.length; i++)
            for (let j = i + 1; j < parts.length; j++) {
              if (parts[i] >= parts[j]) expect(shares[i]).toBeGreaterThanOrEqual(shares[j]);
              else expect(shares[i]).toBeLessThanOrEqual(shares[j]);
            }
        },
      ),
    ));

  it("splits among ten thousand", () => {
    const shares = spill(
      "SPLITCOST",
      12345.67,
      Array.from({ length: 10_000 }, (_, i) => 1 + i / 7),
    ).flat();
    expect(summed(shares)).toBe(12345.67);
  });

  it.each([
    [[1, -2], "cell 2: weight of a share must be from 0 to 1000000000000: -2 is outside"],
    [[0, 0], "weights are all zero: type at least one above zero"],
    [[1, "much"], "cell 2: weight of a share: “much” is not a number: type a value such as 1"],
    [["", ""], "weights are all zero: type at least one above zero"],
  ])("refuses %j in words", (parts, message) => expect(fault("SPLITCOST", 100, parts)).toEqual({ error: "#VALUE!", message }));

  it("says what is missing", () => {
    expect(fault("SPLITCOST", "", [1, 2]).message).toBe("amount to split is missing: type a value such as 100");
    expect(fault("SPLITCOST", "$100", [1, 2]).message).toBe(
      "amount to split: “$100” is text: type the amount as a number, without a currency sign",
    );
    expect(ask("SPLITCOST", "", ["", ""])).toBe("");
  });
});
