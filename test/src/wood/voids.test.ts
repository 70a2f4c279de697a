import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/density.json";
import { near, within } from "../../within";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const none = { error: "#N/A", message: "no empty space is left at this gravity and moisture: dry the wood first" };

describe("VOIDS", () => {
  it.each(rows("void_fraction_ovendry_volume"))("$inputs.G leaves $expected ($source)", ({ inputs, expected, tolerance }) =>
    within(ask("VOIDS", inputs.G), expected, tolerance),
  );

  it.each(rows("max_moisture_content"))(
    "$inputs.Gb holds $expected % of water and no more ($source)",
    ({ inputs, expected, tolerance }) => {
      within((100 * (ask("VOIDS", inputs.Gb) as number)) / inputs.Gb, expected, tolerance);
      expect(fault("VOIDS", inputs.Gb, (expected + tolerance) / 100)).toEqual(none);
    },
  );

  it("shares the piece out among cell wall, water and air", () =>
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1.5, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (G, M) => {
        const air = ask("VOIDS", G, M);
        if (typeof air === "number") near(air + G / 1.54 + G * M, 1, 1e-12);
        else expect(G / 1.54 + G * M).toBeGreaterThanOrEqual(1 - 2e-9);
      }),
    ));

  it("leaves nothing in solid cell wall", () => expect(fault("VOIDS", 1.54)).toEqual(none));

  it("refuses what is no gravity of wood", () =>
    expect(fault("VOIDS", 45)).toEqual({
      error: "#VALUE!",
      message: "oven-dry specific gravity must be from 0.05 to 1.54: 45 is outside",
    }));
});
