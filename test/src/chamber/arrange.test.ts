import * as fc from "fast-check";
import { catalogue, explain } from "../../../src/catalogue";
import { ask, cells, fault, spill, type Typed } from "../../ask";
import { near } from "../../within";

const bare = [
  ["gap", 0],
  ["cover", 0],
  ["foam room", 0],
  ["fullness", 0],
];

describe("ARRANGE", () => {
  it("gives way, layers, stack, resin to pour and resin to add side by side", () => {
    const [[way, layers, stack, pour, add]] = spill("ARRANGE", 6, 10, 0.75, 0.75, 5, 12);
    expect([way, layers]).toEqual(["lying", 4]);
    near(stack, 3);
    // Worked apart in cubic inches: 9π (3 + 1) − 12 × 3.2024 of wood and steel, over 57.75; 12 × 1.2491 taken up − 9π (1 − 1/2).
    const steel = (1.5 * 2.8125 * (1.03 - 0.4)) / (1 - 1.03 / 7.85) / 7.85;
    near(pour, (9 * Math.PI * 4 - 12 * (2.8125 + steel)) / 57.75);
    near(add, (12 * 2.8125 * (1 - 0.4 / 1.54) * 0.6 - 9 * Math.PI * 0.5) / 57.75);
  });

  it.each([
    {
      chamber: 6,
      height: 20,
      piece: [1, 1, 4],
      count: 9,
      is: ["lying", 3, 3],
      from: "four to a layer, so three layers: 3 in against 4 in upright",
    },
    { chamber: 4.4, height: 20, piece: [1, 1, 5], count: 9, is: ["upright", 1, 5], from: "too long to lie; 3 by 3 squares want 4.24 in" },
    { chamber: 4.4, height: 20, piece: [1, 1, 5], count: 20, is: ["upright", 2, 10], from: "so 20 want two layers at least" },
    {
      chamber: "8 x 5 in",
      height: 10,
      piece: [1, 1, 5],
      count: 8,
      is: ["lying", 1, 1],
      from: "five across and three turned: all the floor",
    },
    { chamber: "8 x 5 in", height: 10, piece: [1, 1, 5], count: 9, is: ["lying", 2, 2], from: "one more starts a layer" },
    {
      chamber: 6.4,
      height: 10,
      piece: [2, 2, 2],
      count: 5,
      is: ["upright", 1, 2],
      from: "a cube stands as it lies; five squares want 3.16 sides",
    },
    { chamber: 6.4, height: 10, piece: [2, 2, 2], count: 6, is: ["upright", 2, 4], from: "and six more than that" },
  ])("puts $count of $piece into $chamber as $is ($from)", ({ chamber, height, piece: [t, w, l], count, is }) => {
    const [[way, layers, stack]] = spill("ARRANGE", chamber, height, t, w, l, count, 0.4, bare);
    expect([way, layers]).toEqual(is.slice(0, 2));
    near(stack, is[2] as number);
  });

  it("pours what FILL pours at the start and leaves what HEADROOM allows", () => {
    const solids = 12 * 2.8125;
    const ballast = ask("BALLAST", solids, solids * 0.4 * 16.387064, undefined, [["scale reads", "g"]]) as number;
    const all = solids + ballast / 7.85 / 16.387064;
    const [[, , stack, pour]] = spill("ARRANGE", 6, 10, 0.75, 0.75, 5, 12);
    near(pour, ask("FILL", 6, stack, all) as number);
    near(ask("HEADROOM", 6, 10, pour, all), 10 - (ask("FLUIDLEVEL", 6, pour, all) as number));
  });

  it("takes a gravity of 0.40 where none is given, and a sinking wood without ballast", () => {
    expect(spill("ARRANGE", 6, 10, 0.75, 0.75, 5, 12)).toEqual(spill("ARRANGE", 6, 10, 0.75, 0.75, 5, 12, 0.4));
    const [[, , stack, pour]] = spill("ARRANGE", 6, 10, 0.75, 0.75, 5, 12, 1.1);
    near(pour, ask("FILL", 6, stack, 12 * 2.8125) as number);
  });

  it("says by how much the level falls where the wood takes more than the cover", () => {
    const working = (cover: number) =>
      explain(
        catalogue.find(({ name }) => name === "ARRANGE")!,
        [6, 10, 0.75, 0.75, 5, 12, 0.3, [["cover", cover]]].map((typed) => cells(typed as Typed)),
      );
    const lines = (cover: number) => Object.fromEntries((working(cover) as { lines: readonly (readonly [string, string])[] }).lines);
    near(
      Number.parseFloat(lines(0.25)["as the air comes in the level falls by"]),
      (12 * 2.8125 * (1 - 0.3 / 1.54) * 0.6) / (9 * Math.PI),
      1e-3,
    );
    expect(lines(0.25).note).toMatch(/have the resin to add ready/);
    expect(lines(1)).not.toHaveProperty("note");
  });

  it("agrees under US and SI", () =>
    fc.assert(
      fc.property(
        fc.tuple(
          ...[3, 8, 0.3, 0.3, 0.5].map((least) =>
            fc.integer({ min: Math.ceil(least * 16), max: Math.floor(least * 64) }).map((n) => n / 16),
          ),
        ),
        fc.integer({ min: 1, max: 30 }),
        (sizes, count) => {
          const [us] = spill("ARRANGE", ...sizes, count);
          const [si] = spill("ARRANGE", ...sizes.map((n) => n * 25.4), count, undefined, "SI");
          if (typeof us[0] === "object") return expect(si[0]).toHaveProperty("error", us[0].error);
          expect(si.slice(0, 2)).toEqual(us.slice(0, 2));
          near(si[2], (us[2] as number) * 25.4);
          near(si[3], (us[3] as number) * 0.946352946);
        },
      ),
      { numRuns: 300 },
    ));

  it.each([
    { typed: [6, 10, 0.75, 0.75, 5, 100], error: "#N/A", message: "100 pieces do not fit in one load: 34 would" },
    {
      typed: [6, 10, 0.75, 0.75, 9, 2],
      error: "#N/A",
      message:
        "not one piece fits: the length is too long for the chamber: 9 in standing needs a height of 15 in with cover and foam room, and lying down only 5.827 in is free",
    },
    { typed: [6, 10, 0.75, 0.75, 5, 2.5], error: "#VALUE!", message: "pieces must be a whole number: 2.5 is not" },
    { typed: [6, 10, 0.75, 0.75, 5, 0], error: "#VALUE!", message: "pieces must be from 1 to 1000000: 0 is outside" },
    { typed: [6, 10, 0.75, "", 5, 2], error: "#VALUE!", message: "width is missing: type a value such as 0.75 in" },
    {
      typed: [200, 200, 0.01, 0.01, 0.01, 5, 0.4, bare],
      error: "#VALUE!",
      message: "more than 500 pieces would lie side by side in the chamber: check the units of both",
    },
    { typed: [6, 10, -1, 0.75, 5, 2], error: "#VALUE!", message: "thickness must be from 0.01 in to 200 in: -1 in is outside" },
    {
      typed: [6, 10, "5 oz", 0.75, 5, 2],
      error: "#VALUE!",
      message: "thickness: “5 oz” is a weight, not a length: type it in m, mm, cm, in, ft",
    },
    {
      typed: [[6, 5, 4], 10, 0.75, 0.75, 5, 2],
      error: "#VALUE!",
      message: "chamber takes one cell, the inside diameter, or two, the length and width of a tray",
    },
    { typed: [6, 10, 0.75, 0.75, 5, 2, 2], error: "#VALUE!", message: "oven-dry specific gravity must be from 0.05 to 1.54: 2 is outside" },
  ])("says “$message”", ({ typed, error, message }) => {
    expect(fault("ARRANGE", ...(typed as Parameters<typeof fault>[1][]))).toEqual({ error, message });
  });
});
