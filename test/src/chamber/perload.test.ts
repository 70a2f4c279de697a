import * as fc from "fast-check";
import { ask, fault, spill } from "../../ask";

const eighths = (least: number, most: number) => fc.integer({ min: least * 8, max: most * 8 }).map((n) => n / 8);

describe("PERLOAD", () => {
  it("is what ARRANGE accepts, and one more is not", () =>
    fc.assert(
      fc.property(eighths(3, 12), eighths(4, 16), eighths(0.5, 3), eighths(0.5, 3), eighths(1, 8), (...sizes) => {
        const most = ask("PERLOAD", ...sizes);
        if (typeof most === "object") return expect(most.error).toBe("#N/A");
        expect(spill("ARRANGE", ...sizes, most)[0]).toHaveLength(5);
        expect(fault("ARRANGE", ...sizes, (most as number) + 1)).toEqual({
          error: "#N/A",
          message: `${(most as number) + 1} pieces do not fit in one load: ${most} would`,
        });
      }),
      { numRuns: 60 },
    ));

  it("agrees under US and SI", () =>
    fc.assert(
      fc.property(eighths(3, 12), eighths(4, 16), eighths(0.5, 3), eighths(0.5, 3), eighths(1, 8), (...sizes) => {
        const us = ask("PERLOAD", ...sizes);
        const si = ask("PERLOAD", ...sizes.map((n) => n * 25.4), undefined, "SI");
        if (typeof us === "object") expect(si).toHaveProperty("error", us.error);
        else expect(si).toBe(us);
      }),
      { numRuns: 60 },
    ));

  it("counts the cover and the foam, and not what the wood takes up: that can be added when the air is in", () => {
    // Worked apart: 34 stand 5 in high with 1 in of cover; 6.667 in are free.
    expect(ask("PERLOAD", 6, 10, 0.75, 0.75, 5)).toBe(34);
    expect(ask("PERLOAD", 6, 10, 0.75, 0.75, 5, 0.1, [["fullness", 1]])).toBe(34);
    expect(ask("PERLOAD", 6, 10, 0.75, 0.75, 5, 0.4, [["cover", 2]])).toBe(18);
  });

  it.each([
    {
      typed: [6, 10, 0.75, 0.75, 9],
      message:
        "the length is too long for the chamber: 9 in standing needs a height of 15 in with cover and foam room, and lying down only 5.827 in is free",
    },
    {
      typed: ["8 x 5 in", 10, 0.75, 0.75, 9],
      message:
        "the length is too long for the chamber: 9 in standing needs a height of 15 in with cover and foam room, and lying down only 7.875 in is free",
    },
    {
      typed: [6, 10, 7, 0.75, 1],
      message:
        "the thickness is too thick for the chamber: 7 in standing needs a height of 12 in with cover and foam room, and lying down only 5.827 in is free",
    },
    { typed: [6, 10, 7, 8, 9], message: "the thickness is too thick for the chamber: 7 in, and only 5.875 in is free across the floor" },
    { typed: [6, 10, 3, 5.5, 9], message: "the width is too wide for the chamber: 5.5 in, and only 5.051 in is free across the floor" },
    {
      typed: [6, 4, 2, 2, 2],
      message: "the height is too small: even lying flat, a piece needs 4.5 in with cover and foam room, and the chamber has 4 in",
    },
    { typed: [6, 1, 1, 1, 1], message: "the height is too small: foam room leaves 0.6667 in of 1 in, and the cover takes 1 in" },
    {
      typed: [152.4, 25.4, 25.4, 25.4, 25.4, undefined, "SI"],
      message: "the height is too small: foam room leaves 16.93 mm of 25.4 mm, and the cover takes 25.4 mm",
    },
  ])("names the dimension at fault: “$message”", ({ typed, message }) => {
    expect(fault("PERLOAD", ...(typed as Parameters<typeof fault>[1][]))).toEqual({ error: "#N/A", message });
  });

  it("does not count past a million", () => {
    expect(fault("PERLOAD", 200, 200, 0.4, 0.4, 0.4)).toEqual({
      error: "#VALUE!",
      message: "1000000 pieces or more would fit: check the units of the piece and the chamber",
    });
  });
});
