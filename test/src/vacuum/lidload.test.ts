import { catalogue, explain } from "../../../src/catalogue";
import { deflection, stress } from "../../../src/vacuum/plate";
import { ask, fault, spill } from "../../ask";
import published from "../../published/lid.json";
import { within } from "../../within";

const psi = 6894.757293168361;
const inch = 0.0254;
const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const plateOf = ({ free_diameter_in, thickness_in, E_psi = 450_000, nu }: any) => ({
  a: (free_diameter_in / 2) * inch,
  t: thickness_in * inch,
  E: E_psi * psi,
  nu,
});
const notRuledOut = "not ruled out (this is no approval)";
const tooWeak = {
  error: "#N/A",
  message: "do not pump: this lid is too weak for full vacuum by the lid limit; use a chamber and lid made and rated for vacuum",
};
/** Stress in psi under sea-level pressure and 3 %: the rows are for sea-level pressure alone. */
const loaded = (inches: { free_diameter_in: number; thickness_in: number }) =>
  stress(plateOf({ ...inches, nu: 0.35 }), 101325 * 1.03) / psi;
const lid = (...typed: any[]) => spill("LIDLOAD", ...typed);

describe("LIDLOAD", () => {
  it.each(rows("lid_full_vacuum"))("$inputs: $expected ($source)", ({ inputs, expected, tolerance }) => {
    const p = inputs.p_psi * psi;
    within(stress(plateOf(inputs), p) / psi, expected.ss_stress_psi, tolerance.ss_stress_psi);
    within(deflection(plateOf(inputs), p) / inch, expected.ss_deflection_in, tolerance.ss_deflection_in);
  });

  it.each(rows("lid_full_vacuum").filter(({ inputs }) => inputs.material === "PMMA"))(
    "a cast acrylic lid of $inputs.free_diameter_in x $inputs.thickness_in in is judged by 1.03 times its stress over 1500 psi, in one cell",
    ({ inputs, expected }) => {
      const refused = (1.03 * expected.ss_stress_psi) / 1500 >= 0.5;
      expect(lid(inputs.free_diameter_in, inputs.thickness_in)).toEqual([[refused ? tooWeak : notRuledOut]]);
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

  it.each(rows("design_stress_continuous"))("$inputs.material may bear $expected psi ($source)", ({ inputs, expected }) => {
    // A lid 6 in across under sea-level pressure and 3 %, at a hair either side of the share that the row makes of it.
    const share = loaded({ free_diameter_in: 6, thickness_in: 1 }) / expected;
    const by = (limit: number) => ask("LIDLOAD", 6, 1, inputs.material, [["lid limit", limit]]);
    expect(by(share * 1.00001)).toBe(notRuledOut);
    expect(by(share * 0.99999)).toEqual(tooWeak);
    expect(by(share)).toEqual(tooWeak);
  });

  it("passes no lid that sinks by half its thickness, where the formula ends: the stress refuses it first", () => {
    for (const across of [2, 6, 12, 30, 100])
      for (let thick = across / 40; thick < across / 4; thick += across / 200) {
        const sunk = deflection(plateOf({ free_diameter_in: across, thickness_in: thick, nu: 0.35 }), 101325 * 1.03) / (thick * inch);
        if (sunk > 0.5 && thick <= 20) expect(fault("LIDLOAD", across, thick, "cast", [["lid limit", 1]])).toEqual(tooWeak);
      }
    expect(ask("LIDLOAD", 6, 0.75, "cast", [["lid limit", 1]])).toBe(notRuledOut);
  });

  it("takes no altitude: the lid is judged at sea level and 3 %, whatever the shop's air", () => {
    const inches = { free_diameter_in: 6, thickness_in: 0.75 };
    const share = loaded(inches) / 1500;
    for (const air of [[], [["altitude", 5280]], [["barometer", "83431.769 Pa"]]]) {
      expect(ask("LIDLOAD", 6, 0.75, undefined, [...air, ["lid limit", share * 1.00001]])).toBe(notRuledOut);
      expect(ask("LIDLOAD", 6, 0.75, undefined, [...air, ["lid limit", share * 0.99999]])).toEqual(tooWeak);
    }
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

  it("agrees in inches and millimeters", () => {
    expect(lid(152.4, 19.05, "Cast Acrylic", "SI")).toEqual(lid(6, 0.75));
    expect(lid(152.4, 10, "Cast Acrylic", "SI")).toEqual(lid(6, 10 / 25.4));
  });

  it("never tells a share, and says that it approves nothing", () => {
    const contract = catalogue.find(({ name }) => name === "LIDLOAD")!;
    const told = JSON.stringify(explain(contract, [[[6]], [[0.75]]]));
    expect(told).not.toMatch(/%|20\.[23]|0\.20|304|2\.09/);
    for (const word of ["holes", "notches", "scratches", "heat", "solvent", "aging", "approves nothing", "never a tub's"])
      expect(contract.accuracy).toContain(word);
    expect(contract.cautions).toContain("lid");
  });
});
