import fc from "fast-check";
import { ask } from "../../ask";
import published from "../../published/thermal.json";
import { near, within } from "../../within";

describe("SELFHEAT", () => {
  it("is a heat balance with no heat lost: what the resin gives off over what warms wood and resin (first law, worked by hand)", () => {
    // A cubic metre at gravity 0.40, 60 % full: 457.5 kg of resin give 114.4 MJ; wood 551.6 and resin 915 kJ/K take it up.
    const resin = 0.6 * (1 - 0.4 / 1.54) * 1030;
    const rise = (resin * 250e3) / (400 * 1379 + resin * 2000);
    near(ask("SELFHEAT", 0.4, 0.6, "SI"), rise, 1e-12);
    near(ask("SELFHEAT", 0.4, 0.6), rise * 1.8, 1e-12);
    near(ask("SELFHEAT", 0.4), rise * 1.8, 1e-12);
  });

  it.each(published.filter(({ quantity }) => quantity === "rise_by_own_heat"))(
    "$inputs: $expected K ($source)",
    ({ inputs, expected, tolerance }) => {
      const { gravity, fullness, heat_of_cure: heat } = inputs;
      within(
        ask("SELFHEAT", gravity!, fullness!, [
          ["units", "SI"],
          ["heat of cure", heat!],
        ]),
        expected as number,
        tolerance,
      );
    },
  );

  it("never passes what bare resin would come to, and is nothing without resin", () => {
    expect(ask("SELFHEAT", 0.4, 0)).toBe(0);
    expect(ask("SELFHEAT", 1.54, 0.6)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1.54, noNaN: true }), fc.double({ min: 0, max: 1.05, noNaN: true }), (gravity, fullness) => {
        const rise = ask("SELFHEAT", gravity, fullness, "SI") as number;
        expect(rise).toBeGreaterThanOrEqual(0);
        expect(rise).toBeLessThan(250e3 / 2000);
      }),
    );
  });
});
