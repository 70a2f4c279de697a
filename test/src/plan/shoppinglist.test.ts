import fc from "fast-check";
import type { Fault, Outcome } from "../../../shared/outcome";
import { ask, fault, spill } from "../../ask";
import { near, within } from "../../within";
import { anyCase, type Line, linesOf } from "./cases";

const names = [
  "resin to mix",
  "packets",
  "dye",
  "foil",
  "ballast of the heaviest load",
  "loads",
  "pulls",
  "chamber hours",
  "oven hours",
  "days",
  "resin left",
  "resin discarded",
  "earliest ready",
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
    expect(rows.map(([, , unit]) => unit)).toEqual([
      ...["qt", "", "tsp", "ft²", "oz", "", "", "h", "h", "", "qt", "qt", ""],
      "huge: too thick to bake by calculation (over 2 in, the setting “thickest”): follow the maker's schedule",
    ]);
    expect(spill("SHOPPINGLIST", pieces, 152, 305, "", undefined, "SI").map(([, , unit]) => unit)).toEqual(
      "L,,mL,m²,g,,,h,h,,L,L,,".split(","),
    );
  });

  it("reckons by hand: 48 blanks in two loads", () => {
    const list = amounts(spill("SHOPPINGLIST", pieces, 6, 12, "2026-03-14 08:00"));
    // Faces: 40 × 2 (0.5625 + 3.75 + 3.75) + 8 × 2 (2 + 5 + 10) = 645 + 272 = 917 in², and half as much again of foil.
    near(list.foil, (1.5 * 917) / 144);
    expect(list.loads).toBe(2);
    expect(list.pulls).toBe(2);
    // In 8:30, out 8:00; then in 9:00, out 8:00.
    near(list["chamber hours"], 23.5 + 23);
    expect(list.days).toBe(3);
    expect(list["not planned"]).toBe(1);
  });

  it("counts the vacuum alone as chamber hours where tubs soak beside it", () => {
    const list = amounts(
      spill("SHOPPINGLIST", pieces, 12, 12, "2026-03-14 08:00", undefined, [
        ["tub", 5],
        ["tubs", 4],
      ]),
    );
    near(list["chamber hours"], 4 * list.pulls);
    expect(list.loads).toBeGreaterThan(list.pulls);
  });

  it("weighs the ballast of the heaviest load, each piece's own", () => {
    const ounces = (volume: number, gravity: number) => ask("BALLAST", volume, (volume * 16.387064 * gravity) / 28.349523125) as number;
    const list = amounts(spill("SHOPPINGLIST", pieces, 12, 12));
    near(list["ballast of the heaviest load"], ounces(112.5, 0.45) + ounces(80, 0.4));
  });

  it("wants no foil for bare pieces", () =>
    expect(amounts(spill("SHOPPINGLIST", pieces, 6, 12, "", undefined, [["in the oven", "fan"]])).foil).toBe(0));

  it("refuses as PLAN does", () =>
    expect(fault("SHOPPINGLIST", pieces, 6, 12, "", undefined, [["vacuum hours", 20]])).toEqual(
      fault("PLAN", pieces, 6, 12, "", undefined, [["vacuum hours", 20]]),
    ));

  it("gives nothing to buy where nothing is planned, and leaves the resin where it stands", () => {
    const list = amounts(spill("SHOPPINGLIST", [["huge", 1, 9, 9, 9, 0.4]], 6, 12, "", undefined, [["resin on hand", 2]]));
    expect(list).toEqual({
      ...Object.fromEntries(names.map((name) => [name, 0])),
      "resin left": expect.closeTo(2, 12),
      "earliest ready": "",
      "not planned": 1,
    });
  });

  it("is the sum of PLAN, color by color", () =>
    fc.assert(
      fc.property(anyCase, (shop) => {
        const rows = shop.spill("PLAN");
        if (rows.length === 1 && typeof rows[0][0] === "object") return expect(shop.spill("SHOPPINGLIST")).toEqual([[rows[0][0]]]);
        const lines = linesOf(rows);
        const loads = lines.filter(isLoad);
        const list = shop.spill("SHOPPINGLIST") as [string, number, string][];
        const all = (name: string) =>
          list.filter(([own]) => own === name || own.startsWith(`${name}, `)).reduce((sum, [, amount]) => sum + amount, 0);
        const sum = (name: string) => loads.reduce((all, line) => all + (line[name] as number), 0);
        within(all("resin to mix"), sum("to mix"), 1e-9);
        expect(all("packets")).toBe(sum("packets"));
        within(
          all("dye"),
          loads.reduce((all, { dye }) => all + ((dye as Fault).error ? 0 : (dye as number)), 0),
          1e-9,
        );
        expect(all("loads")).toBe(loads.length);
        expect(all("not planned")).toBe(lines.length - loads.length);
        expect(all("pulls")).toBeGreaterThanOrEqual(new Set(loads.map((line) => line.in)).size);
        if (loads.length) within(all("earliest ready"), Math.max(...loads.map(({ done }) => done as number)), 1e-9);
      }),
      { numRuns: 40 },
    ));
});
