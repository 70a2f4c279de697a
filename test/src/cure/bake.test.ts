import fc from "fast-check";
import type { Working } from "../../../shared/working";
import { explain } from "../../../src/catalogue";
import { bake } from "../../../src/cure/bake";
import { block, secondsTo } from "../../../src/cure/block";
import { ask, fault, spill } from "../../ask";
import published from "../../published/thermal.json";
import { near, within } from "../../within";

const bare = (h: number, more: (string | number)[][] = []) => [["oven surface coefficient", h], ["shortest bake", 0], ...more];
/** Heat to warm a volume, J/m³K, with liquid resin in the pores, the cell wall at 1.53 as those rows have it. */
const warm = (G: number, f: number) => 1000 * G * 1379 + f * (1 - G / 1.53) * 1030 * 2000;
const side = fc.double({ min: 0.05, max: 2, noNaN: true });
const anyPiece = fc.record({
  thickness: side,
  width: side,
  length: fc.double({ min: 0.05, max: 12, noNaN: true }),
  gravity: fc.double({ min: 0.2, max: 1.2, noNaN: true }),
  h: fc.double({ min: 1, max: 500, noNaN: true }),
});

describe("BAKE", () => {
  it.each([
    { way: "foil", minutes: 46 },
    { way: "spaced", minutes: 34 },
    { way: "fan", minutes: 24 },
  ])("a 3/4 x 3/4 x 5 in blank at gravity 0.40 takes $minutes min $way", ({ way, minutes }) =>
    within(
      ask("BAKE", 0.75, 0.75, 5, 0.4, [
        ["in the oven", way],
        ["shortest bake", 0],
      ]),
      minutes,
      0.5,
    ),
  );

  it.each(published.filter((row) => row.quantity === "bake_time_core_190F" && (row.inputs as any).k_transverse === 0.144756) as any[])(
    "$inputs.block_in in at h $inputs.h: $expected min there, as much longer here as liquid resin takes more heat, to 0.3 % (cell wall 1.53 there)",
    ({ inputs, expected }) =>
      near(ask("BAKE", ...inputs.block_in, 0.4, bare(inputs.h)), (expected * warm(0.4, 0.6)) / inputs.rho_cp, 0.003),
  );

  it("adds the hold, and never goes under the shortest bake", () => {
    const alone = ask("BAKE", 0.75, 0.75, 5, 0.4) as number;
    near(ask("BAKE", 0.75, 0.75, 5, 0.4, [["hold", 10]]), alone + 10, 1e-12);
    expect(ask("BAKE", 0.25, 0.75, 5, 0.4, bare(20))).toBeLessThan(15);
    near(ask("BAKE", 0.25, 0.75, 5, 0.4, [["in the oven", "fan"]]), 30, 1e-12);
  });

  it("takes a missing width for a square, a missing length for an endless bar, a missing gravity for 0.40", () => {
    near(ask("BAKE", 1, "", 5, 0.4), ask("BAKE", 1, 1, 5, 0.4) as number, 1e-12);
    near(ask("BAKE", 1, 1, "", ""), ask("BAKE", 1, 1, 200, 0.4) as number, 1e-9);
  });

  it("answers a column row by row", () => {
    expect(spill("BAKE", [0.75, "", "thick", 3], [0.75, "", 1, 3])).toEqual([
      [expect.closeTo(ask("BAKE", 0.75, 0.75) as number, 12)],
      [""],
      [{ error: "#VALUE!", message: "thickness: “thick” is not a length: type a value such as 0.75 in" }],
      [
        {
          error: "#N/A",
          message: "too thick to bake by calculation (over 2 in, the setting “thickest”): follow the maker's schedule",
        },
      ],
    ]);
  });

  it("refuses a core that the oven cannot reach, and a room that is warmer than the core", () => {
    expect(fault("BAKE", 1, 1, 5, 0.4, [["core", 200]])).toEqual({
      error: "#VALUE!",
      message: "core must be cooler than the oven: 200 °F is not below 200 °F",
    });
    expect(
      fault("BAKE", 1, 1, 5, 0.4, [
        ["core", 110],
        ["room", 110],
      ]).message,
    ).toBe("room must be cooler than the core: 110 °F is not below 110 °F");
  });

  it("refuses by the smallest side given, allowing a billionth", () => {
    expect(fault("BAKE", 2.01, 3, 5).error).toBe("#N/A");
    expect(fault("BAKE", 3, 2.01).error).toBe("#N/A");
    expect(typeof ask("BAKE", 3, 3, 2)).toBe("number");
    expect(typeof ask("BAKE", 2 * (1 + 1e-10), 3, 5)).toBe("number");
  });

  it("never bakes longer in a hotter oven, for a thinner piece, or with more heat to the surface", () =>
    fc.assert(
      fc.property(anyPiece, fc.double({ min: 0.5, max: 1, noNaN: true }), ({ thickness, width, length, gravity, h }, less) => {
        const minutes = ask("BAKE", thickness, width, length, gravity, bare(h)) as number;
        const slack = minutes * (1 + 1e-9);
        expect(ask("BAKE", thickness, width, length, gravity, bare(h, [["oven", 200 + 100 * (1 - less)]]))).toBeLessThanOrEqual(slack);
        expect(ask("BAKE", thickness * less, width, length, gravity, bare(h))).toBeLessThanOrEqual(slack);
        expect(ask("BAKE", thickness, width * less, length, gravity, bare(h))).toBeLessThanOrEqual(slack);
        expect(ask("BAKE", thickness, width, length * less, gravity, bare(h))).toBeLessThanOrEqual(slack);
        expect(ask("BAKE", thickness, width, length, gravity, bare(Math.min(500, h / less)))).toBeLessThanOrEqual(slack);
      }),
    ));

  it("answers with a number at every extreme", () => {
    const slow = [["thickest", 12]];
    for (const thickness of [0.01, 0.1, 2, 12])
      for (const length of [0.01, 1, 200])
        for (const h of [1, 8, 500])
          for (const gravity of [0.05, 0.4, 1.54])
            for (const core of [71, 90.001, 199.999999, 199.9999999999]) {
              const room = core === 71 ? 70.999999999 : 70;
              const settings = [...bare(h, slow), ["core", Math.max(90, core)], ["room", core === 71 ? 89.9999999999 : room]];
              const minutes = ask("BAKE", thickness, thickness, length, gravity, settings);
              expect(minutes).toBeGreaterThan(0);
              expect(minutes).toBeLessThan(1e6);
            }
  });

  const told = (core: number, thickness = 0.75) =>
    explain(bake, [[[thickness]], [[thickness]], [[5]], [[0.4]], [["core", core]]]) as Working;

  it("says its likely range, and where that has no end", () => {
    // Least: k 0.1690 W/mK, one and a half times 8 W/m²K. Most: k 0.1206 W/mK, two thirds of it, an oven at 195 °F.
    const sides = { thickness: 0.01905, width: 0.01905, length: 0.127 };
    const quick = secondsTo(block(sides, 12, 0.168955, warm(0.4, 0.6)), 10 / 130) / 60;
    const slow = secondsTo(block(sides, 16 / 3, 0.120557, warm(0.4, 0.6)), 5 / 125) / 60;
    expect(told(190).answer).toEqual([["minutes in the oven", `about 46 min, likely ${quick.toFixed(0)} to ${slow.toFixed(0)}`]]);
    expect(told(196).answer[0][1]).toMatch(/^about \d+ min, likely \d+ or more$/);
    expect(told(190).equation).toBe(
      "46.1 min until the core reaches 190 °F in an oven at 200 °F, starting at 70 °F; plus 0 min; at least 30 min",
    );
    const [by, short, long] = ["middle", "short end", "long end"].map((end) => ask("BAKE", 0.75, 0.75, 5, 0.4, [["bake by", end]]));
    near(by, ask("BAKE", 0.75, 0.75, 5, 0.4) as number, 1e-12);
    near(short, quick, 0.003);
    near(long, slow, 0.003);
    expect(
      fault("BAKE", 0.75, 0.75, 5, 0.4, [
        ["bake by", "long end"],
        ["core", 196],
      ]),
    ).toEqual({ error: "#N/A", message: "there is no long end: in an oven 5 °F cooler than set, the core never reaches 196 °F" });
  });

  it("says that the resin heats itself, and why practice is shorter where it is", () => {
    expect(told(190).beside.join()).not.toContain("Common practice");
    const [why, own] = told(190, 1.5).beside;
    expect(why).toMatch(/^Common practice is 30 to 60 minutes\..* Test one piece: if it is sticky, bake it again\.$/);
    expect(own).toContain("by up to 140 °F");
  });
});
