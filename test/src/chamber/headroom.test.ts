import * as fc from "fast-check";
import { ask, fault } from "../../ask";
import { near } from "../../within";

/** Solids that stand so many inches high in a chamber of 6 in. */
const high = (inches: number) => inches * 9 * Math.PI;

describe("HEADROOM", () => {
  it.each([
    { typed: [6, 10, 0, high(6)], is: 4, from: "6 of 10 in" },
    { typed: [6, 9, 0, high(6)], is: 3, from: "just what the foam needs" },
    { typed: [6, 10, 0, high(9.5), [["foam room", 0]]], is: 0.5, from: "no foam expected" },
    { typed: ["10 x 5.775 in", 6, 2, 0], is: 4, from: "two quarts of 57.75 in³" },
  ])("of $typed is $is in ($from)", ({ typed, is }) => near(ask("HEADROOM", ...(typed as Parameters<typeof ask>[1][])), is));

  it("is nothing at the brim where no foam is expected", () => {
    near(ask("HEADROOM", 6, 10, 0, high(10), [["foam room", 0]]), 0, 0);
  });

  it("and FLUIDLEVEL make up the height", () =>
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), fc.double({ min: 0, max: 0.6, noNaN: true }), (d, share) => {
        const solids = ((share * 10 * Math.PI) / 4) * d ** 2;
        near((ask("HEADROOM", d, 10, 0, solids) as number) + (ask("FLUIDLEVEL", d, 0, solids) as number), 10);
      }),
    ));

  it.each([
    { typed: [6, 10, 1, high(10)], error: "#N/A", message: "the chamber overflows by 1 qt: pour less or take pieces out" },
    { typed: [6, 10, 0, high(7.25)], error: "#N/A", message: "the foam needs 3.333 in and only 2.75 in is free: take out 0.2856 qt" },
    {
      typed: [152.4, 254, 0, high(7.25) * 16.387064, "SI"],
      error: "#N/A",
      message: "the foam needs 84.67 mm and only 69.85 mm is free: take out 0.2703 L",
    },
    { typed: [6, "", 0, 1], error: "#VALUE!", message: "inside height of the chamber is missing: type a value such as 10 in" },
    {
      typed: [6, 10, 1, 1, [["foam room", 33]]],
      error: "#VALUE!",
      message: "shop, foam room: share of the tub's height left empty for foam: 33 means 3300 %: type 33 % or 0.33",
    },
  ])("says “$message”", ({ typed, error, message }) => {
    expect(fault("HEADROOM", ...(typed as Parameters<typeof fault>[1][]))).toEqual({ error, message });
  });
});
