import { dimensionsOf, findUnit, fromInternal, plainUnits, toInternal } from "../../shared/unit";
import type { Dimension } from "../../shared/unittable";
import published from "../published/units.json";
import { near, within } from "../within";

/** How the published table's names and result units are written here. */
const names: Record<string, readonly [Dimension, string]> = {
  "US cup": ["volume", "cup"],
  "US tablespoon": ["volume", "tbsp"],
  "US teaspoon": ["volume", "tsp"],
  inch: ["length", "in"],
  "cubic inch": ["volume", "in³"],
  "avoirdupois ounce": ["mass", "oz"],
  psi: ["pressure", "psi"],
  torr: ["pressure", "torr"],
  "mmHg conventional": ["pressure", "mmHg"],
  "lb/ft3": ["density", "lb/ft³"],
  cfm: ["flow", "ft³/min"],
};
const results: Record<string, string> = { mL: "mL", mm: "mm", g: "g", Pa: "Pa", "kg/m3": "kg/m³" };

describe("factors", () => {
  const rows = published.flatMap((row) => (row.unit && names[row.unit] ? [{ ...row, unit: row.unit }] : []));
  it.each(rows)("one $unit is $expected $in ($source)", ({ unit, expected, tolerance, in: result }) => {
    const [dimension, name] = names[unit];
    const one = toInternal(1, findUnit(dimension, name)!);
    const out = result === "L/s" ? one * 1000 : fromInternal(one, findUnit(dimension, results[result])!);
    within(out, expected, Math.max(tolerance, Math.abs(expected) * 1e-14));
  });

  const degrees = published.flatMap((row) => (row.fahrenheit === undefined ? [] : [{ ...row, fahrenheit: row.fahrenheit }]));
  it.each(degrees)("$fahrenheit °F is $expected °C ($source)", ({ fahrenheit, expected, tolerance }) =>
    within(toInternal(fahrenheit, findUnit("temperature", "F")!), expected, tolerance),
  );

  it("counts four quarts, sixteen cups and 768 teaspoons to the gallon (NIST HB 44, App. C)", () => {
    const one = (name: string) => toInternal(1, findUnit("volume", name)!);
    near(one("gal") / one("qt"), 4, 1e-15);
    near(one("gal") / one("cup"), 16, 1e-15);
    near(one("gal") / one("tsp"), 768, 1e-15);
    near(one("gal"), 3.785411784e-3, 1e-15);
  });

  it("puts a quarter teaspoon to the quart at 1.302 mL to the litre (a quart has 192 teaspoons)", () => {
    near(toInternal(0.25, plainUnits("US").strength) * 1000, 0.25 / 0.192, 1e-12);
  });
});

describe("spellings", () => {
  it.each([
    ["length", '"', "in"],
    ["length", "INCHES", "in"],
    ["length", "″", "in"],
    ["temperature", "° C", "°C"],
    ["temperature", "deg F", "°F"],
    ["volume", "Fl. Oz.", "fl oz"],
    ["volume", "cu in", "in³"],
    ["volume", "Quarts", "qt"],
    ["share", "percent", "%"],
    ["pressure", "in Hg", "inHg"],
  ] as const)("in %s, %s is %s", (dimension, typed, name) => expect(findUnit(dimension, typed)?.name).toBe(name));

  it("knows no unit of another dimension, and tells which it has", () => {
    expect(findUnit("length", "g")).toBeUndefined();
    expect(dimensionsOf("g")).toEqual(["mass"]);
    expect(dimensionsOf("furlong")).toEqual([]);
  });
});

describe("plain units", () => {
  it("are the system's own, but for weights where the scale reads something else", () => {
    expect(plainUnits("US").weight.name).toBe("oz");
    expect(plainUnits("SI").weight.name).toBe("g");
    expect(plainUnits("US", "g").weight.name).toBe("g");
    expect(plainUnits("US", "g").fluid.name).toBe("qt");
  });
});
