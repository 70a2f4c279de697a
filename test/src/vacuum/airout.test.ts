import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/vacuum.json";
import { near, within } from "../../within";
import { systemsAgree } from "../wood/systems";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const air = (pascal: number) => [["barometer", `${pascal} Pa`]];

describe("AIROUT", () => {
  it.each(rows("fraction_air_removed"))("$inputs draws out $expected ($source)", ({ inputs, expected, tolerance }) =>
    within(ask("AIROUT", inputs.gauge_inHg, undefined, air(inputs.ambient_Pa)), expected, tolerance),
  );

  it.each(rows("absolute_from_gauge"))("$inputs leaves $expected Pa ($source)", ({ inputs, expected, tolerance }) => {
    const out = ask("AIROUT", inputs.gauge_inHg, undefined, air(inputs.ambient_Pa)) as number;
    within((1 - out) * inputs.ambient_Pa, expected, tolerance);
  });

  it.each([-25, "-25", "−25 inHg", "- 25", "25 inHg", "84.659716 kPa"])(
    "reads %s as 25 inHg: the minus sign on a dial says nothing",
    (typed) => near(ask("AIROUT", typed), ask("AIROUT", 25) as number),
  );

  it("counts a gauge up to 1 inHg deeper than the air pressure as empty, and refuses a deeper one", () => {
    const shop = [["barometer", 29]];
    expect(ask("AIROUT", 29, undefined, shop)).toBe(1);
    expect(ask("AIROUT", 30, undefined, shop)).toBe(1);
    expect(fault("AIROUT", 30.01, undefined, shop)).toEqual({
      error: "#VALUE!",
      message: "gauge reading of 30.01 inHg is deeper than the air pressure here, 29 inHg: check the unit, the altitude and the barometer",
    });
    expect(fault("AIROUT", "90 kPa", "5280 ft", "SI").message).toBe(
      "gauge reading of 90 kPa is deeper than the air pressure here, 83.43 kPa: check the unit, the altitude and the barometer",
    );
  });

  it("agrees in inches of mercury and kilopascals", () =>
    fc.assert(
      fc.property(fc.double({ min: 0, max: 15, noNaN: true }), fc.double({ min: 0, max: 15000, noNaN: true }), (gauge, Z) =>
        systemsAgree("AIROUT", gauge, Z),
      ),
    ));

  it.each([
    { typed: 740, message: "gauge reading must be from 0 inHg to 40 inHg: 740 inHg is outside" },
    {
      typed: "25 in",
      message: "gauge reading: “25 in” is a length, not a pressure: type it in Pa, kPa, hPa, mbar, bar, atm, inHg, mmHg, torr, psi",
    },
  ])("$message", ({ typed, message }) => expect(fault("AIROUT", typed)).toEqual({ error: "#VALUE!", message }));
});
