import * as fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/resin.json";

const spoon: Record<string, number> = { "1/2": 0.5, "1/4": 0.25, "1/8": 0.125 };
const amountOf = (words: string) =>
  words
    .split(" + ")
    .map((part) => part.replace(" tsp", ""))
    .reduce((sum, part) => sum + (spoon[part] ?? Number(part)), 0);

describe("SPOONS", () => {
  it.each(published.filter(({ quantity }) => quantity === "spoons"))("$mL mL are $words ($source)", ({ mL, words }) => {
    expect(ask("SPOONS", mL, "SI")).toBe(words);
    expect(ask("SPOONS", `${mL} mL`)).toBe(words);
  });

  it.each([
    [0, "none"],
    [0.03, "a pinch, under 1/8 tsp"],
    [0.0624, "a pinch, under 1/8 tsp"],
    [0.0625, "1/8 tsp"],
    [0.3, "1/4 tsp"],
    [0.32, "1/4 tsp + 1/8 tsp"],
    [0.9, "1/2 tsp + 1/4 tsp + 1/8 tsp"],
    [0.94, "1 tsp"],
    [1.25, "1 tsp + 1/4 tsp"],
    [4.5, "4 tsp + 1/2 tsp"],
    [1 / 3, "1/4 tsp + 1/8 tsp"],
  ])("%d tsp is “%s”, by hand", (tsp, words) => expect(ask("SPOONS", tsp)).toBe(words));

  it("is never more than half of the smallest spoon off, and uses no spoon twice", () =>
    fc.assert(
      fc.property(fc.double({ min: 0.0625, max: 200, noNaN: true }), (tsp) => {
        const words = ask("SPOONS", tsp) as string;
        expect(Math.abs(amountOf(words) - tsp)).toBeLessThanOrEqual(1 / 16 + 1e-6);
        const parts = words.split(" + ");
        expect(new Set(parts).size).toBe(parts.length);
      }),
    ));

  it("refuses less than none", () =>
    expect(fault("SPOONS", -1)).toEqual({
      error: "#VALUE!",
      message: "dye powder must be from 0 tsp to 1000000 tsp: -1 tsp is outside",
    }));
});
