import { sayMeasured } from "../../shared/measured";
import { plainUnits, toInternal } from "../../shared/unit";
import type { kindTable } from "../../shared/unittable";

const said = (kind: keyof typeof kindTable, format: string, plain: number, system: "US" | "SI" = "US") => {
  const units = plainUnits(system);
  return sayMeasured({ label: "", kind } as never, format, toInternal(plain, units[kind]), units);
};

describe("a worked-out number as a person can measure it", () => {
  it.each([
    ["fluid", "0.00", 1.136727, "1.14 qt"],
    ["fluid", "0.00", 0.015432, "0.015 qt"],
    ["length", "0.00", 7.3712, "7 3/8 in"],
    ["length", "0.00", 0.8126, "13/16 in"],
    ["length", "0.00", 5.999, "6 in"],
    ["length", "0.00", -0.26, "-1/4 in"],
    ["length", "0.00", 0.01, "0.01 in"],
    ["length", "0.00", 0, "0 in"],
    ["minutes", "0", 44.7, "45 min"],
    ["share", "0.0%", 0.11827957, "11.8 %"],
    ["temperature", "0", 189.6, "190 °F"],
    ["money", "0.00", 3.875, "3.88"],
  ] as const)("%s %s: %d is said as %s", (kind, format, plain, words) => expect(said(kind, format, plain)).toBe(words));

  it("is whole millimeters in SI", () => expect(said("length", "0.00", 117.249, "SI")).toBe("117 mm"));
});
