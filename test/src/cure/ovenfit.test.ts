import fc from "fast-check";
import type { Working } from "../../../shared/working";
import { catalogue, explain } from "../../../src/catalogue";
import { secondsTo } from "../../../src/cure/block";
import { cured } from "../../../src/cure/filled";
import { slabsOf } from "../../../src/cure/heating";
import { ask, fault } from "../../ask";
import published from "../../published/thermal.json";
import { near, within } from "../../within";
import { marchedTo } from "./finite";

const k = 0.144756;
const dummy = { sides: [0.01905, 0.01905, 0.127], k: [k, k, 1.8 * k], heat: 1.3269e6 } as const;

/** What OVENFIT makes of the middle of a square bar of our dummy's wood, so much of its lead left at a Fourier number; in °C. */
const asked = (left: number, fourier: number, side: number, conductivity: number, heat: number) =>
  ask("OVENFIT", (fourier * (side / 2) ** 2 * heat) / conductivity / 60, 90 - 70 * left, side * 1000, undefined, undefined, 0.4, [
    ["units", "SI"],
    ["oven", 90],
    ["room", 20],
    ["fullness", 0.6],
  ]);

describe("OVENFIT", () => {
  it.each(published.filter(({ quantity }) => quantity === "oven_surface_coefficient"))(
    "$inputs.zeta1 and $inputs.C1 at Fo $inputs.Fo: $expected W/m²K ($source)",
    ({ inputs: { zeta1, C1, Fo, side_m: side, k, rho_cp: heat }, expected, tolerance }) =>
      within(asked((C1! * Math.exp(-(zeta1! ** 2) * Fo!)) ** 2, Fo!, side!, k!, heat!), expected as number, tolerance),
  );

  const { inputs: bar } = published.findLast(({ quantity }) => quantity === "oven_surface_coefficient")!;
  // Where hardly any heat has come to the middle, the six digits of the row tell nothing of the surface.
  const told = published.filter(({ quantity, expected }) => quantity === "center_temperature_square_bar" && (expected as number) < 0.99);
  it.each(told)("gives back Bi $inputs.Bi from a core at $expected of its lead ($source)", ({ inputs: { Bi, Fo }, expected }) => {
    const h = (Bi! * bar.k!) / (bar.side_m! / 2);
    within(asked(expected as number, Fo!, bar.side_m!, bar.k!, bar.rho_cp!), h, h * 1e-5);
  });

  it.each([5, 8, 12, 20])("finds h %d again from a dummy blank that finite volumes have heated", (h) => {
    // The blank of the bake rows of thermal.json, cured: its core at 150 °F leaves 50 of 130 °F.
    const minutes = marchedTo({ ...dummy, h }, 50 / 130) / 60;
    within(ask("OVENFIT", minutes, 150, 0.75, 0.75, 5, 0.4), h, h * 0.01);
  });

  it("undoes the series: the core that h gives, gives h back", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 100, noNaN: true }), fc.double({ min: 0.2, max: 0.8, noNaN: true }), (h, share) => {
        const core = 200 - 130 * share;
        const seconds = secondsTo(slabsOf({ thickness: 0.01905, length: 0.127, gravity: 0.4, fullness: 0.6 }, h, undefined, cured), share);
        near(ask("OVENFIT", seconds / 60, core, 0.75, 0.75, 5, 0.4), h, 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it("needs less of the surface the longer the same core took", () => {
    const [quick, slow] = [20, 40].map((minutes) => ask("OVENFIT", minutes, 150, 0.75, 0.75, 5, 0.4) as number);
    expect(quick).toBeGreaterThan(slow);
  });

  it.each([
    [200, "as warm as the oven"],
    [210, "warmer than the oven"],
    [70, "as cool as the room"],
    [199.9, "sooner than any surface"],
  ])("has no answer for a core at %d °F, %s", (core) =>
    expect(fault("OVENFIT", 5, core, 0.75, 0.75, 5, 0.4)).toEqual({
      error: "#N/A",
      message: expect.stringMatching(/^no surface coefficient from 1 to 500 W\/m²K explains .* check the thermometers/),
    }),
  );

  it("takes a cured dummy of any thickness, and refuses an oven no warmer than the room", () => {
    expect(typeof ask("OVENFIT", 120, 150, 3, 3, 5, 0.4)).toBe("number");
    expect(
      fault("OVENFIT", 30, 100, 0.75, 0.75, 5, 0.4, [
        ["oven", 100],
        ["room", 110],
      ]).message,
    ).toBe("room must be cooler than the oven: 110 °F is not below 100 °F");
  });

  it("says how to measure, and never in wet resin", () => {
    const told = explain(catalogue.find(({ name }) => name === "OVENFIT")!, [[[30]], [[175]], [[0.75]]]) as Working;
    expect(told.beside.join()).toMatch(/cured, dry blank.*Never use a piece with uncured resin/);
  });
});
