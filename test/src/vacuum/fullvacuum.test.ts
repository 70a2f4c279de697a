import fc from "fast-check";
import { ask, fault, spill } from "../../ask";
import published from "../../published/vacuum.json";
import { near, within } from "../../within";
import { systemsAgree } from "../wood/systems";

const perfect = [["pump end pressure", "1 Pa"]];

describe("FULLVACUUM", () => {
  it.each(published.filter(({ quantity }) => quantity === "deepest_gauge_vacuum") as any[])(
    "$inputs.altitude_ft ft lets a perfect pump show $expected inHg ($source)",
    ({ inputs, expected, tolerance }) => {
      within(ask("FULLVACUUM", inputs.altitude_ft, perfect), expected, tolerance);
      within(ask("FULLVACUUM", undefined, [...perfect, ["altitude", inputs.altitude_ft]]), expected, tolerance);
    },
  );

  it("stops short by the pump's end pressure, 0.1 inHg unless the plate says otherwise", () => {
    near(ask("FULLVACUUM"), (ask("BAROMETER", 0) as number) - 0.1);
    near(ask("FULLVACUUM", 3000, [["pump end pressure", 2]]), (ask("BAROMETER", 3000) as number) - 2);
  });

  it("goes by the altitude typed before the barometer, and by the barometer before the shop's altitude", () => {
    const shop = [
      ["altitude", 7000],
      ["barometer", 25],
    ];
    near(ask("FULLVACUUM", 3000, shop), ask("FULLVACUUM", 3000) as number);
    near(ask("FULLVACUUM", undefined, shop), 24.9);
    near(ask("FULLVACUUM", undefined, [shop[0]]), ask("FULLVACUUM", 7000) as number);
    expect(spill("FULLVACUUM", [3000, ""], shop)).toEqual([[ask("FULLVACUUM", 3000)], [""]]);
  });

  it("agrees in inches of mercury and kilopascals", () =>
    fc.assert(fc.property(fc.double({ min: -1500, max: 36000, noNaN: true }), (Z) => systemsAgree("FULLVACUUM", Z))));

  it("says so when the pump ends above the air pressure", () =>
    expect(fault("FULLVACUUM", 36000, [["pump end pressure", 10]])).toEqual({
      error: "#VALUE!",
      message: "pump end pressure must be below the air pressure here: 10 inHg is not below 6.732 inHg",
    }));
});
