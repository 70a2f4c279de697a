import { catalogue, explain } from "../../../src/catalogue";
import { deflection, stress } from "../../../src/vacuum/plate";
import { fault, spill } from "../../ask";
import published from "../../published/lid.json";
import { near, within } from "../../within";

const psi = 6894.757293168361;
const inch = 0.0254;
const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const plateOf = ({ free_diameter_in, thickness_in, E_psi = 450_000, nu }: any) => ({
  a: (free_diameter_in / 2) * inch,
  t: thickness_in * inch,
  E: E_psi * psi,
  nu,
});
const notRefused = "not ruled out (this is no approval)";
const overStressed = (limit: string) => ({
  error: "#N/A",
  message: `do not pump: the bare lid would bear ${limit} or more of its published design stress; use a chamber and lid made and rated for vacuum`,
});
const lid = (...typed: any[]) => spill("LIDLOAD", ...typed)[0];

describe("LIDLOAD", () => {
  it.each(rows("lid_full_vacuum"))("$inputs: $expected ($source)", ({ inputs, expected, tolerance }) => {
    const p = inputs.p_psi * psi;
    within(stress(plateOf(inputs), p) / psi, expected.ss_stress_psi, tolerance.ss_stress_psi);
    within(deflection(plateOf(inputs), p) / inch, expected.ss_deflection_in, tolerance.ss_deflection_in);
  });

  it.each(rows("lid_full_vacuum").filter(({ inputs }) => inputs.material === "PMMA"))(
    "a cast acrylic lid of $inputs.free_diameter_in x $inputs.thickness_in in bears its stress over 1500 psi",
    ({ inputs, expected }) => {
      const share = expected.ss_stress_psi / 1500;
      const answer = lid(inputs.free_diameter_in, inputs.thickness_in);
      if (share >= 0.5) return expect(answer).toEqual([overStressed("50 %"), overStressed("50 %")]);
      expect(answer[0]).toBe(notRefused);
      near(answer[1], share, 2e-6);
    },
  );

  it.each(rows("min_thickness_for_1500psi_ss"))(
    "$inputs comes to 1500 psi at $expected in ($source)",
    ({ inputs, expected, tolerance }) => {
      const at = (thickness_in: number) => stress(plateOf({ ...inputs, thickness_in }), inputs.p_psi * psi) / psi;
      expect(at(expected - tolerance)).toBeGreaterThan(1500);
      expect(at(expected + tolerance)).toBeLessThan(1500);
    },
  );

  it.each(rows("design_stress_continuous"))("$inputs.material may bear $expected psi ($source)", ({ inputs, expected }) =>
    near(lid(6, 1, inputs.material)[1], 166.156 / expected, 1e-5),
  );

  it("refuses at the limit and above it, in both cells", () => {
    const [, share] = lid(6, 0.75);
    expect(lid(6, 0.75, undefined, undefined, [["lid limit", share as number]])).toEqual([
      overStressed("19.69 %"),
      overStressed("19.69 %"),
    ]);
    expect(lid(6, 0.75, undefined, undefined, [["lid limit", (share as number) * 1.001]])[0]).toBe(notRefused);
    expect(lid(6, 0.4)).toEqual([overStressed("50 %"), overStressed("50 %")]);
    expect(lid(6, 0.5, "extruded")).toEqual([overStressed("50 %"), overStressed("50 %")]);
  });

  it("refuses a lid that sinks by more than half its thickness, where the formula ends", () => {
    const sinks = {
      error: "#N/A",
      message: "do not pump: the lid would sink by more than half its thickness; use a chamber and lid made and rated for vacuum",
    };
    const high = [["lid limit", 1]];
    expect(lid(30, 0.81, "cast acrylic", 36000, high)).toEqual([sinks, sinks]);
    expect(lid(30, 0.95, "cast acrylic", 36000, high)[0]).toBe(notRefused);
  });

  it("bears less in the mountains: the air is what presses", () => {
    near(lid(6, 0.75, undefined, 5280)[1], ((lid(6, 0.75)[1] as number) * 83431.769) / 101325, 1e-7);
    near(
      lid(6, 0.75, undefined, undefined, [
        ["barometer", "83431.769 Pa"],
        ["altitude", 100],
      ])[1],
      lid(6, 0.75, undefined, 5280)[1] as number,
      1e-7,
    );
  });

  it.each([
    ["glass", "glass breaks without warning and is not screened: use a chamber and lid made and rated for vacuum"],
    ["Tempered Glass", "glass breaks without warning and is not screened: use a chamber and lid made and rated for vacuum"],
    [
      "polycarbonate",
      "no design stress for “polycarbonate” is known here, only for cast acrylic and extruded acrylic: use a chamber and lid made and rated for vacuum",
    ],
    [
      "acrylic",
      "no design stress for “acrylic” is known here, only for cast acrylic and extruded acrylic: use a chamber and lid made and rated for vacuum",
    ],
  ])("refuses %s", (material, message) =>
    expect(fault("LIDLOAD", 6, 1, material)).toEqual({ error: "#VALUE!", message: `material of the lid: ${message}` }),
  );

  it("agrees in inches and millimetres", () => near(lid(152.4, 19.05, "Cast Acrylic", undefined, "SI")[1], lid(6, 0.75)[1] as number));

  it("never tells the share in the working, and says that it certifies nothing", () => {
    const contract = catalogue.find(({ name }) => name === "LIDLOAD")!;
    const told = JSON.stringify(explain(contract, [[[6]], [[0.75]]]));
    expect(told).not.toMatch(/19\.6|295\.|0\.196/);
    expect(told).toContain("it certifies nothing");
    for (const word of ["holes", "notches", "scratches", "heat", "solvent", "ageing", "certifies nothing"])
      expect(contract.accuracy).toContain(word);
    expect(contract.cautions).toContain("lid");
  });
});
