import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/moisture.json";
import { within } from "../../within";
import { systemsAgree } from "./systems";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const percent = ({ temp_C, temp_F, rh_pct }: { temp_C?: number; temp_F?: number; rh_pct: number }) =>
  100 * (ask("EMC", temp_C === undefined ? temp_F : `${temp_C} C`, rh_pct / 100) as number);

/** Wood Handbook, FPL-GTR-282 (2021), eq. 4-5 in °F: a second set of coefficients for the same surface. */
function fahrenheitForm(T: number, h: number): number {
  const W = 330 + 0.452 * T + 0.00415 * T ** 2;
  const K = 0.791 + 0.000463 * T - 8.44e-7 * T ** 2;
  const K1 = 6.34 + 0.000775 * T - 9.35e-5 * T ** 2;
  const K2 = 1.09 + 0.0284 * T - 9.04e-5 * T ** 2;
  const Kh = K * h;
  return (1800 / W) * (Kh / (1 - Kh) + (K1 * Kh + 2 * K1 * K2 * Kh ** 2) / (1 + K1 * Kh + K1 * K2 * Kh ** 2));
}

const temperatures = fc.double({ min: 30, max: 270, noNaN: true });
const humidities = fc.double({ min: 0, max: 1, noNaN: true });

describe("EMC", () => {
  it.each([...rows("emc_table_4_2"), ...rows("emc_eq_4_5"), ...rows("emc_eq_4_5_fahrenheit_form")])(
    "$inputs gives $expected % ($source)",
    ({ inputs, expected, tolerance }) => within(percent(inputs), expected, tolerance),
  );

  it("agrees with the °F form to 0.06 % moisture all over the table, and to 0.02 % in a shop", () =>
    fc.assert(
      fc.property(temperatures, humidities, (temp_F, h) => {
        const off = temp_F < 130 ? 0.02 : 0.06;
        within(percent({ temp_F, rh_pct: 100 * h }), fahrenheitForm(temp_F, h), off);
      }),
      { numRuns: 400 },
    ));

  it("rises with humidity, from nothing in dry air", () => {
    expect(ask("EMC", 70, 0)).toBe(0);
    fc.assert(
      fc.property(temperatures, humidities, (T, h) => {
        expect(ask("EMC", T, h)).toBeGreaterThanOrEqual(ask("EMC", T, h * 0.99) as number);
      }),
    );
  });

  it("agrees in °F and °C", () => fc.assert(fc.property(temperatures, humidities, (T, h) => systemsAgree("EMC", T, h))));

  it.each([
    { typed: [70, 50], message: "relative humidity: 50 means 5000 %: type 50 % or 0.5" },
    { typed: [20, 0.5], message: "temperature of the air must be from 30 °F to 270 °F: 20 °F is outside" },
    { typed: [300, 0.5], message: "temperature of the air must be from 30 °F to 270 °F: 300 °F is outside" },
    { typed: [70, null], message: "relative humidity is missing: type a value such as 50 %" },
  ])("$message", ({ typed, message }) => expect(fault("EMC", ...typed)).toEqual({ error: "#VALUE!", message }));
});
