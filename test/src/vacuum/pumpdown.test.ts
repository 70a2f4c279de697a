import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/vacuum.json";
import { near, within } from "../../within";
import { systemsAgree } from "../wood/systems";

const pa = (n: number) => `${n} Pa`;

describe("PUMPDOWN", () => {
  it.each(published.filter(({ quantity }) => quantity === "pumpdown_time") as any[])(
    "$inputs takes $expected min ($source)",
    ({ inputs: { V_L, S_L_per_min, p0_Pa, p_Pa }, expected, tolerance }) => {
      // The row's pump ends at nothing, and a pump of ours ends at something: too little to tell.
      const shop = [
        ["units", "SI"],
        ["barometer", pa(p0_Pa)],
        ["pump end pressure", "0.04 Pa"],
      ];
      within(ask("PUMPDOWN", V_L, S_L_per_min, pa(p0_Pa - p_Pa), undefined, shop), expected, tolerance + 2e-5);
    },
  );

  it("has AIROUT at its end: what an exhausting pump has left of the air by then", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0, max: 10000, noNaN: true }),
        (volume, rate, share, Z) => {
          const air = ask("BAROMETER", `${Z} ft`, "SI") as number;
          const end = 0.5;
          const gauge = (air - end) * share;
          const shop = [
            ["units", "SI"],
            ["pump end pressure", end],
          ];
          const minutes = ask("PUMPDOWN", volume, rate, gauge, `${Z} ft`, shop) as number;
          const left = end + (air - end) * Math.exp((-minutes * rate) / volume);
          within(ask("AIROUT", gauge, `${Z} ft`, shop), 1 - left / air, 1e-9);
        },
      ),
    ));

  it("agrees with pumping in a great many strokes, each of which draws a millionth of the chamber", () => {
    const air = 101325;
    const end = 338.6388640341;
    let pressure = air;
    let strokes = 0;
    for (; air - pressure < 25 * 3386.388640341; strokes++) pressure -= (pressure - end) * 1e-6;
    near(ask("PUMPDOWN", 10, `${(10 * 57.75 * 0.0254 ** 3) / 0.001} L/min`, 25), strokes * 1e-6, 1e-5);
  });

  it("takes no time to where it stands, and reads a gauge with its minus sign", () => {
    expect(ask("PUMPDOWN", 10, 2.5, 0)).toBe(0);
    expect(ask("PUMPDOWN", 10, 2.5, -25)).toBe(ask("PUMPDOWN", 10, 2.5, 25));
  });

  it("says so when the pump does not reach", () => {
    const venturi = [["pump end pressure", 3]];
    const short = (gauge: number) => ({
      error: "#N/A",
      message: `the pump does not reach ${gauge} inHg: by its end pressure its gauge stays short of 26.92 inHg here`,
    });
    expect(fault("PUMPDOWN", 10, 2.5, 27, undefined, venturi)).toEqual(short(27));
    expect(fault("PUMPDOWN", 10, 2.5, 35, undefined, venturi)).toEqual(short(35));
    expect(ask("PUMPDOWN", 10, 2.5, 26.9, undefined, venturi)).toBeGreaterThan(0.8);
    expect(fault("PUMPDOWN", 10, 2.5, 1, 36000, [["pump end pressure", 10]]).message).toBe(
      "pump end pressure must be below the air pressure here: 10 inHg is not below 6.732 inHg",
    );
  });

  it("agrees in quarts and litres, cubic feet and litres a minute", () =>
    fc.assert(
      fc.property(fc.double({ min: 0, max: 16, noNaN: true }), fc.double({ min: 0.1, max: 50, noNaN: true }), (gauge, rate) =>
        systemsAgree("PUMPDOWN", 10, rate, gauge, 5000),
      ),
    ));

  it("asks for the rate", () =>
    expect(fault("PUMPDOWN", 10, null, 25)).toEqual({
      error: "#VALUE!",
      message: "rate of the pump or venturi is missing: type a value such as 2.5 ft³/min",
    }));
});
