import fc from "fast-check";
import { standardPressure } from "../../../src/vacuum/atmosphere";
import { ask, fault, spill } from "../../ask";
import published from "../../published/vacuum.json";
import { within } from "../../within";
import { systemsAgree } from "../wood/systems";
import { standardAir } from "./psychrometrics";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const metres = ({ altitude_ft, altitude_m }: { altitude_ft?: number; altitude_m?: number }) => altitude_m ?? altitude_ft! * 0.3048;

describe("BAROMETER", () => {
  it.each(rows("standard_atmosphere_pressure"))("$inputs gives $expected Pa ($source)", ({ inputs, expected, tolerance }) => {
    within(standardPressure(metres(inputs)), expected, tolerance);
    if (metres(inputs) > -457) within(1000 * (ask("BAROMETER", `${metres(inputs)} m`, "SI") as number), expected, tolerance);
  });

  it.each(rows("standard_atmosphere_pressure_ashrae"))("$inputs is near $expected Pa ($source)", ({ inputs, expected, tolerance }) =>
    within(standardPressure(inputs.altitude_m), expected, tolerance),
  );

  it("obeys the hydrostatic equation dP = −ρ g dZ, in air of 288.15 K − 6.5 K/km", () =>
    fc.assert(
      fc.property(fc.double({ min: -450, max: 10900, noNaN: true }), (Z) => {
        const slope = (standardPressure(Z + 1) - standardPressure(Z - 1)) / 2;
        const toGeopotential = 6356766 / (6356766 + Z);
        const density = (standardPressure(Z) * 28.9644) / (8314.32 * (288.15 - 0.0065 * Z * toGeopotential));
        within(slope / (-density * 9.80665 * toGeopotential ** 2), 1, 1e-6);
      }),
    ));

  it("agrees with a library of air for heating engineers to 25 Pa in the lowest 4 km, which it takes as geopotential", () => {
    for (let Z = -400; Z <= 4000; Z += 200) within(standardPressure(Z), standardAir(Z), 25);
  });

  it("agrees in feet and metres", () =>
    fc.assert(fc.property(fc.double({ min: -1500, max: 36000, noNaN: true }), (Z) => systemsAgree("BAROMETER", Z))));

  it("goes by the altitude it is asked about, whatever the shop says", () =>
    expect(
      ask("BAROMETER", 5280, [
        ["barometer", 30],
        ["altitude", 100],
      ]),
    ).toBe(ask("BAROMETER", 5280)));

  it("answers a column", () =>
    expect(spill("BAROMETER", [0, "", "1 mile"])).toEqual([
      [expect.closeTo(29.9213, 4)],
      [""],
      [{ error: "#VALUE!", message: "altitude: “mile” in “1 mile” is not a known unit: type m, mm, cm, in, ft" }],
    ]));

  it.each([
    { typed: 40000, message: "altitude must be from -1500 ft to 36000 ft: 40000 ft is outside" },
    { typed: -2000, message: "altitude must be from -1500 ft to 36000 ft: -2000 ft is outside" },
  ])("$message", ({ typed, message }) => expect(fault("BAROMETER", typed)).toEqual({ error: "#VALUE!", message }));
});
