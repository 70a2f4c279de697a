import fc from "fast-check";
import type { Working } from "../../../shared/working";
import { catalogue, explain } from "../../../src/catalogue";
import { secondsTo } from "../../../src/cure/block";
import { cured } from "../../../src/cure/filled";
import { slabsOf } from "../../../src/cure/heating";
import { ask, fault } from "../../ask";
import { near, within } from "../../within";
import { marchedTo } from "./finite";

const k = 0.144756;
const dummy = { sides: [0.01905, 0.01905, 0.127], k: [k, k, 1.8 * k], heat: 1.3269e6 } as const;

describe("OVENFIT", () => {
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
