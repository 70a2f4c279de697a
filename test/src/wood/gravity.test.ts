import { catalogue } from "../../../src/catalogue";
import { resistanceOf } from "../../../src/wood/heartwood";
import { findSpecies, gravityAt, speciesNames } from "../../../src/wood/species";
import { ask, fault } from "../../ask";
import density from "../../published/density.json";
import species from "../../published/species.json";
import { near, within } from "../../within";

const rows = (quantity: string) => density.filter((row) => row.quantity === quantity) as any[];

describe("GRAVITY", () => {
  it.each(species)("$name: green $green, at 12 % $at12, shrinkage $shrinkage % ($source)", ({ name, green, at12, shrinkage }) => {
    expect(ask("GRAVITY", name, "green")).toBe(green);
    if (at12 !== null) expect(ask("GRAVITY", name, "12 %")).toBe(at12);
    // FPL-GTR-282 eqs. 4-9, 4-11 and 4-12, written out here once more.
    const pair = at12 === null ? 0.265 * green : (1 - green / at12) / 0.6;
    const dry = green / (1 - (shrinkage === null ? pair : shrinkage / 100));
    near(ask("GRAVITY", name), dry);
    const usual = ask("GRAVITY", name, "12 %") as number;
    expect(dry).toBeGreaterThan(usual);
    expect(dry).toBeLessThan(1.15 * usual);
  });

  it.each(species)("the range of $name holds the table's own number", ({ name, green, at12 }) => {
    const contract = catalogue.find((one) => one.name === "GRAVITY")!;
    const holds = (at: string | undefined, value: number) => {
      const [least, most] = contract.trust!({ species: name, at }) as [number, number];
      expect(least).toBeLessThanOrEqual(value);
      expect(most).toBeGreaterThanOrEqual(value);
    };
    holds("green", green);
    if (at12 !== null) for (const at of [undefined, "12 %"]) holds(at, at12);
  });

  it.each([
    { name: "Osage-orange", expected: 0.923 },
    { name: "honey mesquite", expected: 0.849 },
    { name: "black locust", expected: 0.735 },
  ])("$name comes to $expected dry, from the tabled pair or its shrinkage", ({ name, expected }) =>
    within(ask("GRAVITY", name), expected, 5e-4),
  );

  it("has a row for every wood it knows", () => expect(speciesNames).toHaveLength(species.length));

  it.each(rows("sg_at_mc_known_shrinkage"))("$inputs gives $expected ($source)", ({ inputs, expected, tolerance }) => {
    const wood = { ...findSpecies("American elm"), green: inputs.Gb, shrinkage: inputs.S0_pct / 100 };
    within(gravityAt(wood, inputs.mc / 100), expected, tolerance);
  });

  it.each(rows("volumetric_shrinkage_estimate"))("green gravity $inputs.Gb shrinks by $expected % ($source)", ({ inputs, expected }) => {
    const dry = gravityAt({ ...findSpecies("boxelder"), green: inputs.Gb, at12: undefined, shrinkage: undefined }, 0);
    near(100 * (1 - inputs.Gb / dry), expected);
  });

  it.each(rows("volumetric_shrinkage_table_4_3"))("$inputs.species shrinks by $expected % ($source)", ({ inputs, expected }) =>
    near(100 * findSpecies(inputs.species).shrinkage!, expected),
  );

  it.each(rows("green_gravity_world_mean"))("$inputs.species lies within its spread of $expected ($source)", (row) =>
    within(ask("GRAVITY", row.inputs.species, "green"), row.expected, row.tolerance),
  );

  it.each([
    ["silver maple", "Maple, silver"],
    ["SILVER  Maple", "silver-maple"],
    ["box elder", "Boxelder"],
    ["elder, box", undefined],
    ["Buckeye, yellow", "yellow buckeye"],
    ["Oak, Oregon white", "oregon white oak"],
    ["Osage orange", "osage-orange"],
    ["Western Redcedar", "Cedar, western redcedar"],
    ["western red cedar", "redcedar, western"],
    ["yellow poplar", "tulip poplar"],
    ["Douglas fir", "Douglas-fir, coast"],
    ["pecan", "Hickory, pecan"],
  ])("%s is %s", (one, other) => {
    if (other) expect(ask("GRAVITY", one)).toBe(ask("GRAVITY", other));
    else expect(fault("GRAVITY", one).error).toBe("#N/A");
  });

  it("takes the state in its spellings, and a cell that shows 12 %", () => {
    for (const at of ["12 %", "12%", 0.12, "0.12"]) expect(ask("GRAVITY", "white ash", at)).toBe(0.6);
    expect(ask("GRAVITY", "white ash", "Green")).toBe(0.55);
    expect(ask("GRAVITY", "white ash", "Dry")).toBe(ask("GRAVITY", "white ash"));
  });

  it.each([
    {
      typed: ["silver mapel"],
      error: "#N/A",
      message: "no wood called “silver mapel” is in the tables: the nearest are silver maple, sugar maple, bigleaf maple",
    },
    {
      typed: ["Mapel, silver"],
      error: "#N/A",
      message: "no wood called “Mapel, silver” is in the tables: the nearest are silver maple, sugar maple, bigleaf maple",
    },
    {
      typed: ["maple"],
      error: "#N/A",
      message: "“maple” is not one wood: type one of bigleaf maple, black maple, red maple, silver maple, sugar maple",
    },
    { typed: ["Oak, red"], error: "#N/A", message: "“Oak, red” is not one wood: type one of northern red oak, southern red oak" },
    {
      typed: ["soft maple"],
      error: "#N/A",
      message: "“soft maple” is not one wood: type one of silver maple, red maple, bigleaf maple, boxelder",
    },
    { typed: ["walnut"], error: "#N/A", message: "“walnut” is not one wood: type black walnut" },
    { typed: ["zzzzzz"], error: "#N/A", message: "no wood called “zzzzzz” is in the tables: weigh and measure it with PIECEGRAVITY" },
    { typed: ["white ash", "wet"], error: "#VALUE!", message: "state of the wood: “wet” is not one of dry, 12 %, green" },
    { typed: ["white ash", 0.2], error: "#VALUE!", message: "state of the wood: “0.2” is not one of dry, 12 %, green" },
  ])("$message", ({ typed, error, message }) => expect(fault("GRAVITY", ...typed)).toEqual({ error, message }));

  it("names every resistant heartwood as the tables do", () => {
    for (const name of resistanceOf.keys()) expect(speciesNames).toContain(name);
  });
});
