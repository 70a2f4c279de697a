import * as fc from "fast-check";
import { ask, fault, spill } from "../../ask";
import rows from "../../published/ballast.json";
import { near, within } from "../../within";

const balance = (fluid: number) => [
  ["units", "SI"],
  ["scale reads", "kg"],
  ["hold-down", 1],
  ["resin density", fluid / 1000],
];

describe("BALLAST", () => {
  it.each(rows)("of $weight kg of wood at $density kg/m³ is $expected kg ($source, $where)", (row) => {
    const cm3 = (row.weight / row.density) * 1e6;
    within(ask("BALLAST", cm3, row.weight, row.ballastDensity / 1000, balance(row.resinDensity)), row.expected, row.off);
  });

  it("is what Archimedes weighs: pieces and ballast together displace their weight, hold-down 1", () =>
    fc.assert(
      fc.property(fc.double({ min: 10, max: 1e4, noNaN: true }), fc.double({ min: 0.05, max: 0.99, noNaN: true }), (cm3, gravity) => {
        const kg = (cm3 * gravity) / 1000;
        const steel = ask("BALLAST", cm3, kg, undefined, balance(1030)) as number;
        near(kg + steel, 1030 * (cm3 * 1e-6 + steel / 7850));
      }),
    ));

  it("is held down one and a half times over, in the unit typed or what the scale reads", () => {
    near(ask("BALLAST", 104, 24), 65.46915246170451);
    near(ask("BALLAST", 104, "680.388555 g"), 65.46915246170451 * 28.349523125);
    near(ask("BALLAST", 104, 680.388555, undefined, [["scale reads", "g"]]), 65.46915246170451 * 28.349523125);
  });

  it("is nothing where the pieces sink, and less of what is denser", () => {
    expect(ask("BALLAST", 104, 66)).toBe(0);
    expect(ask("BALLAST", 104, 24, 11.34)).toBeLessThan(ask("BALLAST", 104, 24) as number);
  });

  it("answers a column, a bad row in its row", () => {
    expect(spill("BALLAST", [104, "", 104], [24, "", 600])).toEqual([
      [expect.closeTo(65.469, 3)],
      [""],
      [{ error: "#VALUE!", message: "weight is heavier than any wood: grams typed as ounces?" }],
    ]);
  });

  it("takes the cell wall's own density, and nothing over it", () => {
    const cm3 = 1000;
    expect(ask("BALLAST", cm3, 1.54, undefined, balance(1030))).toBe(0);
    expect(fault("BALLAST", cm3, 1.5401, undefined, balance(1030))).toEqual({
      error: "#VALUE!",
      message: "weight is heavier than any wood: grams typed as ounces?",
    });
  });

  it.each([
    { typed: [104, 24, 1.02], message: "ballast must be denser than the resin: 1.02 g/mL is not above 1.03 g/mL" },
    { typed: [104, 24, 7850], message: "density of the ballast must be from 1 g/mL to 23 g/mL: 7850 g/mL is outside" },
    { typed: [104, "24 in"], message: "weight of the pieces: “24 in” is a length, not a weight: type it in kg, g, oz, lb" },
    { typed: [104, undefined], message: "weight of the pieces is missing: type a value such as 24 oz" },
  ])("says “$message”", ({ typed, message }) => {
    expect(fault("BALLAST", ...(typed as Parameters<typeof fault>[1][]))).toEqual({ error: "#VALUE!", message });
  });
});
