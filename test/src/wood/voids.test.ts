import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/density.json";
import { near, within } from "../../within";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const none = { error: "#N/A", message: "no empty space is left at this gravity and moisture: dry the wood first" };

/** Specific gravity on oven-dry volume of wood whose green one is Gb: Wood Handbook, FPL-GTR-282 (2021), eqs. 4-11 and 4-12. */
const dryOf = (Gb: number) => Gb / (1 - 0.265 * Gb);

describe("VOIDS", () => {
  it.each(rows("void_fraction_ovendry_volume"))("$inputs.G leaves $expected ($source)", ({ inputs, expected, tolerance }) =>
    within(ask("VOIDS", inputs.G), expected, tolerance),
  );

  it.each(rows("max_moisture_content"))(
    "green gravity $inputs.Gb holds $expected % of water and no more ($source)",
    ({ inputs, expected, tolerance }) => {
      within((100 * (ask("VOIDS", dryOf(inputs.Gb), 0.3) as number)) / inputs.Gb + 30, expected, tolerance);
      expect(fault("VOIDS", dryOf(inputs.Gb), (expected + tolerance) / 100)).toEqual(none);
    },
  );

  it.each(rows("sg_at_mc"))("green gravity $inputs.Gb at $inputs.mc %: wall and water on a gravity of $expected ($source)", (row) => {
    const { inputs, expected, tolerance } = row;
    const share = 1 / 1.54 + inputs.mc / 100;
    within((1 - (ask("VOIDS", dryOf(inputs.Gb), inputs.mc / 100) as number)) / share, expected, tolerance);
  });

  it("shares the piece as it is out among cell wall, water and air, swelling up to 30 % and not past it", () =>
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1.5, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (G, M) => {
        const air = ask("VOIDS", G, M);
        // A volume of dry wood grows by 26.5 G %, in step with the moisture, up to 30 %.
        const grown = 1 + 0.265 * G * Math.min(1, M / 0.3);
        if (typeof air === "number") near(air + (G / 1.54 + G * M) / grown, 1, 1e-12);
        else expect((G / 1.54 + G * M) / grown).toBeGreaterThanOrEqual(1 - 2e-9);
      }),
    ));

  it("leaves nothing in solid cell wall", () => expect(fault("VOIDS", 1.54)).toEqual(none));

  it("refuses what is no gravity of wood", () =>
    expect(fault("VOIDS", 45)).toEqual({
      error: "#VALUE!",
      message: "oven-dry specific gravity must be from 0.05 to 1.54: 45 is outside",
    }));
});
