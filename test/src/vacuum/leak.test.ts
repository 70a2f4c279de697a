import { ask, fault, spill } from "../../ask";
import published from "../../published/vacuum.json";
import { near, within } from "../../within";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];

describe("LEAK", () => {
  /** Pa/s that LEAK tells of a chamber of so many liters in which the pressure rose so. */
  const rise = (liters: number, from: number, to: number, seconds: number) =>
    ((spill("LEAK", liters, (101325 - from) / 1000, (101325 - to) / 1000, seconds / 60, "", "", "SI")[0][0] as number) * 1000) / 60;

  it.each(rows("rate_of_rise_leak_pV"))("$inputs leaks $expected Pa L/s ($source)", ({ inputs, expected, tolerance }) =>
    within(inputs.V_L * rise(inputs.V_L, 500, 500 + inputs.dp_Pa, inputs.dt_s), expected, tolerance),
  );

  it.each(rows("rate_of_rise_leak"))("$inputs leaks $expected mol/s ($source)", ({ inputs, expected, tolerance }) => {
    const throughput = inputs.V_m3 * rise(inputs.V_m3 * 1000, inputs.p1_Pa, inputs.p2_Pa, inputs.dt_s);
    within(throughput / (8.314462618 * inputs.T_K), expected, tolerance);
  });

  it("loses what the gauge fell by, over the minutes between", () => {
    near(spill("LEAK", 10, 29, 28, 10)[0][0], 0.1, 1e-12);
    expect(spill("LEAK", 10, 29, 28, 10)[0][1]).toBe("");
    near(spill("LEAK", 10, -29, -28, 10)[0][0], 0.1, 1e-12);
  });

  it("reaches as deep as its pump takes out what leaks in: Q = V Δp/Δt, Q/S above the end pressure", () => {
    // 10 qt at 0.1 inHg a minute into 2.5 ft³/min, which is 74.81 qt/min (exact: 1728/57.75 qt to the cubic foot).
    const over = (10 * 0.1) / ((2.5 * 1728) / 57.75);
    near(spill("LEAK", 10, 29, 28, 10, 2.5)[0][1], (ask("FULLVACUUM", 0) as number) - over, 1e-12);
    near(spill("LEAK", 10, 24, 23, 10, 2.5, 5280)[0][1], (ask("FULLVACUUM", 5280) as number) - over, 1e-12);
    near(spill("LEAK", 10, 29, 29, 10, 2.5)[0][1], ask("FULLVACUUM", 0) as number, 1e-12);
  });

  it("keeps what was lost where the pump cannot hold against it", () => {
    const [[lost, reached]] = spill("LEAK", 100, 29, 9, 1, 0.1);
    near(lost, 20, 1e-12);
    expect(reached).toEqual({ error: "#N/A", message: expect.stringContaining("as much air as the pump takes out") });
  });

  it("refuses readings in the wrong order, and deeper than the air", () => {
    expect(fault("LEAK", 10, 28, 29, 10)).toEqual({
      error: "#VALUE!",
      message: "gauge after shows more vacuum than before, 29 inHg and 28 inHg: shut the pump off and read both again",
    });
    expect(fault("LEAK", 10, 35, 29, 10).message).toContain("is deeper than the air pressure here");
  });

  it("speaks SI when asked", () => {
    const [[lost, reached]] = spill("LEAK", 10, 98, 95, 10, 70, "", "SI");
    near(lost, 0.3, 1e-12);
    within(reached, 101.325 - 0.338638864 - (0.3 * 10) / 70, 1e-9);
  });
});
