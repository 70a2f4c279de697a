import * as fc from "fast-check";
import { ask, fault } from "../../ask";
import { near } from "../../within";

const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("DYETOPUP", () => {
  it.each([
    { typed: [1.5, 0.25, 2, 0.5], is: 1.375, from: "by hand: 0.5 × 3.5 − 0.25 × 1.5" },
    { typed: [1, 0, 1, 0.25], is: 0.5, from: "by hand" },
    { typed: [0, 0.5, 4], is: 1, from: "nothing on hand is DYE" },
    { typed: [2, 0.5, 2, 0.25], is: 0, from: "just brought down" },
  ])("$typed takes $is tsp ($from)", ({ typed, is }) => expect(ask("DYETOPUP", ...typed)).toBeCloseTo(is, 12));

  it("brings all of it to the rate: dye there and dye added are rate × fluid", () =>
    fc.assert(
      fc.property(some(0, 50), some(0, 1), some(0, 50), some(1, 2), (onHand, its, added, rate) => {
        const dye = ask("DYETOPUP", onHand, its, added, rate) as number;
        near(its * onHand + dye + 1, rate * (onHand + added) + 1, 1e-9);
      }),
    ));

  it("says how much clear fluid would bring it down, and that it does", () => {
    expect(fault("DYETOPUP", 2, 0.5, 1, 0.25)).toEqual({
      error: "#N/A",
      message: "too strong already: it takes 2 qt of clear resin to bring it down, 1 qt more than you add",
    });
    expect(ask("DYETOPUP", 2, 0.5, 2, 0.25)).toBeCloseTo(0, 12);
    expect(fault("DYETOPUP", 1.892705892, 2.6, 1, 1.3, "SI").message).toBe(
      "too strong already: it takes 1.893 L of clear resin to bring it down, 0.8927 L more than you add",
    );
  });

  it("knows that no fluid takes the dye out", () =>
    expect(fault("DYETOPUP", 2, 0.5, 1, 0)).toEqual({
      error: "#N/A",
      message: "too strong already: clear resin cannot take all of the dye out",
    }));

  it("names what is missing", () =>
    expect(fault("DYETOPUP", 2, "", 1).message).toBe("dye rate of the resin on hand is missing: type a value such as 0.25 tsp per qt"));
});
