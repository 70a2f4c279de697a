import { filled } from "../filled";

const loads = filled("Loads");

it("plans all loads of Blanks, with a unit over every measure", () => {
  expect(loads.under("load", 9).filter((load) => typeof load === "number")).toHaveLength(1);
  const header = loads.sheet.print.titleRow!;
  expect(loads.value(header, 5)).toBe("to pour");
  for (const [column, unit] of [
    [4, "in³"],
    [5, "qt"],
    [8, "qt"],
    [10, "tsp"],
    [15, "min"],
  ] as const)
    expect(loads.value(header - 1, column)).toBe(unit);
});

it("tells each line of the shopping list to its own places", () => {
  const line = (name: string) => {
    const [at] = [...loads.sheet.cells.keys()].filter((key) => key.endsWith(",1") && loads.value(Number(key.split(",")[0]), 1) === name);
    return { value: loads.value(Number(at.split(",")[0]), 2), format: loads.sheet.cells.get(at.replace(/1$/, "2"))?.format };
  };
  expect(line("loads")).toEqual({ value: 1, format: "0" });
  expect(line("not planned")).toEqual({ value: 1, format: "0" });
  expect(line("resin to mix").format).toBe("0.00");
});

it("asks for a day where it has none, and plans nothing in days from nought", () => {
  const undated = filled("Loads", { Loads: { start: undefined } });
  expect(undated.beside("start", 2)).toMatch(/^type a day and hour here/);
  expect(undated.value(undated.sheet.print.titleRow!, 0)).toBe("");
  expect(filled("Loads", { Loads: { start: undefined }, "My Shop": { "ready by": 46200 } }).under("load", 1)[0]).toBe(1);
});

const notices = ({ value, sheet }: ReturnType<typeof filled>) => {
  const top = [...sheet.cells.keys()].map((at) => Number(at.split(",")[0])).find((row) => value(row, 1) === "not planned")!;
  return [1, 3, 5].map((down) => value(top + down, 1));
};

it("says in words what of the plan is wet, out of date or late", () => {
  expect(notices(loads)).toEqual([expect.stringMatching(/^marked on Blanks .*rows: 2\./), "", ""]);
  expect(loads.texts).toContain("Wet wood makes steam. Dry it first.");
  const old = notices(filled("Loads", { "My Shop": { "resin on hand": 3.6, "resin mixed on": 45901, "ready by": 46098 } }));
  expect(old[1]).toMatch(/^resin on hand expires .*: 3\.6 /);
  expect(old[2]).toMatch(/^late, .*: [1-9]/);
  expect(notices(filled("Loads", { "My Shop": { "ready by": 46300 } }))[2]).toBe("");
});

it("counts foil for a shop that bakes in foil", () => {
  const foil = (way: string) => {
    const { sheet, value } = filled("Loads", { "My Shop": { "in the oven": way } });
    const at = [...sheet.cells.keys()].map((at) => Number(at.split(",")[0])).find((row) => value(row, 1) === "foil")!;
    return value(at, 2);
  };
  expect(foil("foil")).toBeGreaterThan(0);
  expect(foil("spaced")).toBe(0);
});

it("draws the loads over time, each bar as long as its load takes", () => {
  const [{ series, alt }] = loads.sheet.charts;
  const hours = series.map(({ values }) => loads.value(values.row, values.column) as number);
  const header = loads.sheet.print.titleRow!;
  const [into, done] = [12, 16].map((column) => loads.value(header + 1, column) as number);
  expect(hours[0]).toBe(0);
  expect(hours.slice(1).reduce((a, b) => a + b)).toBeCloseTo((done - into) * 24, 6);
  expect(alt).toMatch(/^One bar for each load/);
});

it("fits a screen 1280 pixels wide, helper columns of the chart aside", () =>
  expect(7 * loads.sheet.widths.slice(0, loads.sheet.print.columns).reduce((a, b) => a + b)).toBeLessThan(1240));
