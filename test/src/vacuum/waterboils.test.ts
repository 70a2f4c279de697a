import fc from "fast-check";
import { boilingPoint } from "../../../src/vacuum/saturation";
import { ask, fault } from "../../ask";
import published from "../../published/vacuum.json";
import { within } from "../../within";
import { systemsAgree } from "../wood/systems";
import { saturation } from "./psychrometrics";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
/** The claim: good to 0.05 °C between 0 and 100 °C. */
const claim = 0.05;
const boils = (pascal: number) =>
  ask("WATERBOILS", `${110_000 - pascal} Pa`, undefined, [
    ["units", "SI"],
    ["barometer", 110],
  ]);

/** Wagner and Pruss 1993, the auxiliary equation of IAPWS for the pressure of saturation in Pa at T kelvin: coefficients from memory. */
function auxiliary(T: number): number {
  const tau = 1 - T / 647.096;
  const sum =
    -7.85951783 * tau +
    1.84408259 * tau ** 1.5 -
    11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3.5 -
    15.9618719 * tau ** 4 +
    1.80122502 * tau ** 7.5;
  return 22.064e6 * Math.exp((647.096 / T) * sum);
}

describe("WATERBOILS", () => {
  it.each(rows("water_boiling_verification"))("$inputs.abs_pressure_Pa Pa: $expected K ($source)", ({ inputs, expected, tolerance }) =>
    within(boilingPoint(inputs.abs_pressure_Pa) + 273.15, expected, tolerance),
  );

  it.each(rows("water_saturation_pressure_verification"))("$expected Pa: $inputs.temp_K K ($source)", ({ inputs, expected }) =>
    within(boilingPoint(expected) + 273.15, inputs.temp_K, 2e-6),
  );

  it.each(rows("water_boiling_temperature"))("$inputs.abs_pressure_Pa Pa: $expected °C ($source)", ({ inputs, expected, tolerance }) =>
    within(boils(inputs.abs_pressure_Pa), expected, tolerance),
  );

  it.each(rows("water_saturation_pressure"))("$expected Pa: $inputs.temp_C °C ($source)", ({ inputs, expected }) =>
    within(boils(expected), inputs.temp_C, 0.01),
  );

  it("is the inverse of the saturation pressure, by another equation of IAPWS and by an outside library", () =>
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (t) => {
        within(boils(auxiliary(t + 273.15)), t, claim / 5);
        within(boils(saturation(t)), t, claim / 2);
      }),
    ));

  it("boils at 100 °C in the open at sea level, less 0.03 °C as steam tables have it, and sooner in the mountains", () => {
    within(ask("WATERBOILS", 0, undefined, "SI"), 99.974, 0.001);
    within(ask("WATERBOILS", 0, 5280), 202.4, 0.5);
  });

  it("says so when water boils at any temperature above freezing", () => {
    const anywhere = { error: "#N/A", message: "water boils at any temperature above freezing" };
    for (const gauge of [29.75, 29.92, 30.5, 30.92]) expect(fault("WATERBOILS", gauge)).toEqual(anywhere);
    within(ask("WATERBOILS", 29.74), 32, 0.3);
    expect(fault("WATERBOILS", 30.93)).toEqual({
      error: "#VALUE!",
      message:
        "gauge reading of 30.93 inHg is deeper than the air pressure here, 29.92 inHg: check the unit, the altitude and the barometer",
    });
  });

  it("agrees in °F and °C", () =>
    fc.assert(
      fc.property(fc.double({ min: 0, max: 16, noNaN: true }), fc.double({ min: -1500, max: 15000, noNaN: true }), (gauge, Z) =>
        systemsAgree("WATERBOILS", gauge, Z),
      ),
    ));
});
