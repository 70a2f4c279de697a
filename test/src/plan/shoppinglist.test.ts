import fc from "fast-check";
import type { Fault, Outcome } from "../../../shared/outcome";
import { ask, fault, spill } from "../../ask";
import { near, within } from "../../within";
import { anyCase, type Line, linesOf } from "./cases";

const names = [
  "fluid to mix",
  "packets",
  "dye",
  "foil",
  "ballast of the heaviest load",
  "loads",
  "chamber hours",
  "oven hours",
  "fluid left",
  "not planned",
];

const amounts = (rows: Outcome[][]): Record<string, number> =>
  Object.fromEntries(rows.map(([name, quantity]) => [name, quantity as number]));
const isLoad = (line: Line) => typeof line.load === "number";

describe("SHOPPINGLIST", () => {
  const pieces = [
    ["maple", 40, 0.75, 0.75, 5, 0.45],
    ["knife", 8, 1, 2, 5, 0.4],
    ["huge", 1, 9, 9, 9, 0.4],
  ];

  it("names its lines, each with its unit", () => {
    const rows = spill("SHOPPINGLIST", pieces, 6, 12, "2026-03-14 08:00");
    expect(rows.map(([name]) => name)).toEqual(names);
    expect(rows.map(([, , unit]) => unit)).toEqual(["qt", "", "tsp", "ft²", "oz", "", "h", "h", "qt", ""]);
    expect(spill("SHOPPINGLIST", pieces, 152, 305, "", "SI").map(([, , unit]) => unit)).toEqual([
      "L",
      "",
      "mL",
      "m²",
      "g",
      "",
      "h",
      "h",
      "L",
      "",
    ]);
  });

  it("reckons by hand: 48 blanks in three loads", () => {
    const list = amounts(spill("SHOPPINGLIST", pieces, 6, 12, "2026-03-14 08:00"));
    // Faces: 40 × 2 (0.5625 + 3.75 + 3.75) + 8 × 2 (2 + 5 + 10) = 645 + 272 = 917 in², and half as much again of foil.
    near(list.foil, (1.5 * 917) / 144);
    // In 8:30, out 8:00; then in 9:00, out 8:00, twice.
    near(list["chamber hours"], 23.5 + 23 + 23);
    near(list["oven hours"], (2 * (ask("BAKE", 0.75, 0.75, 5, 0.45) as number) + (ask("BAKE", 1, 2, 5, 0.4) as number)) / 60);
    // Eight of 10 in³ at gravity 0.40 hold down with more steel than twenty of 2.8125 in³ at 0.45.
    const ounces = (volume: number, gravity: number) => ask("BALLAST", volume, (volume * 16.387064 * gravity) / 28.349523125) as number;
    expect(ounces(80, 0.4)).toBeGreaterThan(ounces(56.25, 0.45));
    near(list["ballast of the heaviest load"], ounces(80, 0.4));
    expect(list.loads).toBe(3);
    expect(list["not planned"]).toBe(1);
  });

  it("wants no foil for bare pieces", () =>
    expect(amounts(spill("SHOPPINGLIST", pieces, 6, 12, "", [["in the oven", "fan"]])).foil).toBe(0));

  it("refuses as PLAN does", () =>
    expect(fault("SHOPPINGLIST", pieces, 6, 12, "", [["vacuum hours", 20]])).toEqual(
      fault("PLAN", pieces, 6, 12, "", [["vacuum hours", 20]]),
    ));

  it("gives nothing to buy where nothing is planned, and leaves the resin where it stands", () => {
    const list = amounts(spill("SHOPPINGLIST", [["huge", 1, 9, 9, 9, 0.4]], 6, 12, "", [["resin on hand", 2]]));
    expect(list).toEqual({ ...Object.fromEntries(names.map((name) => [name, 0])), "fluid left": expect.closeTo(2, 12), "not planned": 1 });
  });

  it("is the sum of PLAN, and no fluid is lost: on hand + mixed = taken up + drips + left", () =>
    fc.assert(
      fc.property(anyCase, (shop) => {
        const lines = linesOf(shop.spill("PLAN"));
        const loads = lines.filter(isLoad);
        const list = amounts(shop.spill("SHOPPINGLIST"));
        const sum = (name: string) => loads.reduce((all, line) => all + (line[name] as number), 0);
        near(list["fluid to mix"], sum("to mix"), 1e-9);
        expect(list.packets).toBe(sum("packets"));
        within(
          list.dye,
          loads.reduce((all, { dye }) => all + ((dye as Fault).error ? 0 : (dye as number)), 0),
          1e-9,
        );
        within(list["chamber hours"], (sum("out") - sum("in")) * 24, 1e-5);
        expect(list.loads).toBe(loads.length);
        expect(list["not planned"]).toBe(lines.length - loads.length);
        const dripped = shop.dripsOf(loads);
        const kept = shop.settings["resin on hand"] as number;
        within(kept + list["fluid to mix"], sum("taken up") + dripped + list["fluid left"], 1e-9 * (1 + kept + list["fluid to mix"]));
      }),
      { numRuns: 150 },
    ));
});
