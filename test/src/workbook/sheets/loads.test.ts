import { filled } from "../filled";

const loads = filled("Loads");

const headerOf = ({ sheet }: ReturnType<typeof filled>) => sheet.frozen!.rows - 1;
const header = headerOf(loads);

/** The quantity on a line of the shopping list, and how it is told. */
const line = ({ sheet, value }: ReturnType<typeof filled>, name: string) => {
  const row = [...sheet.cells].flatMap(([key, cell]) => (cell.value === name && key.endsWith(",1") ? [Number(key.split(",")[0])] : []))[0];
  return { value: value(row, 2), format: sheet.cells.get(`${row},2`)?.format };
};

/** The words below the plan. */
const notices = (made: ReturnType<typeof filled>) => Array.from({ length: 4 }, (_, i) => made.value(headerOf(made) + 13 + i, 0));

it("tells its answer first, in a sentence that a formula makes", () => {
  const total = (name: string) => line(loads, name).value;
  expect(loads.value(2, 0)).toMatch(/^97 blanks: 6 loads in \d pulls, done Wed \d+:\d\d AM, mix 2 qt$/);
  expect(loads.value(2, 0)).toContain(`: ${total("loads")} loads in ${total("pulls")} pulls`);
  const counts = [1, 2, 3, 4, 5, 6].map((down) => Number(loads.value(header + down, 3)));
  expect(counts.reduce((sum, count) => sum + count)).toBe(97);
});

it("plans all loads of Blanks, with a unit over every measure and a heading that stays", () => {
  expect(loads.under("load", 9).filter((load) => typeof load === "number")).toHaveLength(6);
  expect(loads.value(header, 5)).toBe("to pour");
  for (const [column, unit] of [
    [4, "in³"],
    [5, "qt"],
    [8, "qt"],
    [10, "tsp"],
    [15, "min"],
  ] as const)
    expect(loads.value(header - 1, column)).toBe(unit);
  expect(loads.sheet.frozen).toEqual({ rows: header + 1, columns: 0 });
});

it("sums the shopping list over the colors, and tells each color by itself beside its resin", () => {
  expect(line(loads, "loads")).toEqual({ value: 6, format: "0" });
  expect(line(loads, "not planned")).toEqual({ value: 0, format: "0" });
  expect(line(loads, "resin to mix").format).toBe("0.00");
  expect(loads.under("resin by color", 3)).toEqual(["blue", "red", ""]);
  for (const name of ["to mix", "packets"]) {
    const own = loads.under(name, 3);
    expect(own.slice(0, 2).reduce<number>((sum, one) => sum + Number(one), 0)).toBeCloseTo(
      Number(line(loads, name === "to mix" ? "resin to mix" : name).value),
      9,
    );
    expect(own[2]).toBe("");
  }
});

it("asks for a day where it has none, and plans nothing in days from nought", () => {
  const undated = filled("Loads", { Loads: { start: undefined } });
  expect(undated.value(2, 0)).toBe("Type a start below to see the plan.");
  expect(undated.value(header, 0)).toBe("");
  expect(filled("Loads", { Loads: { start: undefined }, "My Shop": { "ready by": 46200 } }).under("load", 1)[0]).toBe(1);
});

it("says in words what of the plan is left out, out of date or late", () => {
  expect(notices(loads)).toEqual([expect.stringMatching(/^Left out of the plan: 3 rows of Blanks, pieces: 3\./), "", "", ""]);
  expect(loads.texts).toContain("Wet wood makes steam. Dry it first.");
  const resinRow = [...loads.sheet.cells].find(([, { value }]) => value === "resin by color")![0].split(",")[0];
  const stale = { [`@${Number(resinRow) + 2}`]: { 1: "blue", 2: 3.6, 3: 45901 } };
  const old = notices(filled("Loads", { Loads: stale, "My Shop": { "ready by": 46098 } }));
  expect(old[1]).toMatch(/^Resin on hand that expires .*: 3\.6\./);
  expect(old[2]).toMatch(/^Loads done after .*: [1-9]/);
});

it("tells a row that cannot be planned once, in the words of its error; its other cells are out of sight", () => {
  expect(loads.value(header - 2, 0)).toBe("");
  const told = filled("Loads", { "My Shop": { "most resin": 0.05 } });
  expect(told.value(header - 2, 0)).toMatch(
    /^Cannot be planned: \d+ rows of Blanks\. spalted boxelder: even the smallest load with this row needs [\d.]+ qt of resin, .*; and \d+ more$/,
  );
  const unseen = told.sheet.alerts.filter(({ as }) => as === "unseen");
  expect(unseen.map(({ over: { column, columns } }) => [column, columns])).toEqual([[2, 15]]);
});

it("counts foil for a shop that bakes in foil", () => {
  const foil = (way: string) => line(filled("Loads", { "My Shop": { "in the oven": way } }), "foil").value;
  expect(foil("foil")).toBeGreaterThan(0);
  expect(foil("spaced")).toBe(0);
});

it("draws the week of the plan in days and hours, each bar as long as its load takes", () => {
  const [{ series, moments, axes, alt }] = loads.sheet.charts;
  const days = series.map(({ values }) => loads.value(values.row, values.column) as number);
  const [into, done] = [12, 16].map((column) => loads.value(header + 1, column) as number);
  // The demo's plan begins on a Monday, and a week of the US with the Sunday before, which is serial 8.
  expect(days[0]).toBeCloseTo(into - Math.floor(into) + 9, 6);
  expect(days.slice(1).reduce((a, b) => a + b)).toBeCloseTo(done - into, 6);
  expect([axes[1], moments]).toEqual(["day and hour", { format: "ddd h AM/PM", from: 8 }]);
  expect(alt).toMatch(/^One bar a load/);
});

it("tells beside each load the likely range of its bake", () => {
  for (const down of [1, 2, 3, 4, 5, 6]) {
    const bake = loads.value(header + down, 15) as number;
    const [short, long] = String(loads.value(header + down, 17))
      .split(" to ")
      .map(Number);
    expect(short).toBeLessThan(bake);
    expect(long).toBeGreaterThan(bake);
  }
  expect(loads.value(header + 7, 17)).toBe("");
});

/** Beside the numbers of the rows and the scroll bar. */
it("fits a screen 1280 pixels wide, helper columns of the chart aside", () =>
  expect(7 * loads.sheet.widths.slice(0, loads.sheet.print.columns).reduce((a, b) => a + b)).toBeLessThan(1280 - 48 - 16));

it.each([
  ["Monday", /^not a day and hour: type a day and hour, such as 3\/14\/2026 2:00 PM$/],
  [12, /^not a day and hour/],
  ["2026-03-16 08:00", /^day and hour to start$/],
  [undefined, /^type a day and hour, such as .*, or “ready by” on My Shop$/],
])("says beside a start of %s what to type", (start, words) =>
  expect(filled("Loads", { Loads: { start } }).beside("start", 3)).toMatch(words),
);

it.each([
  [{ 1: "red" }, /^this color is listed twice/],
  [{ 2: "much" }, /^on hand cannot be used: type qt as a number, such as 1.5$/],
  [{ 2: -1 }, /^on hand cannot be used/],
  [{ 3: "last week" }, /^mixed on is no day: type one such as 3\/14\/2026$/],
  [{ 4: "strong" }, /^dye rate cannot be used/],
  [{ 1: "bleu" }, /^no blank has this color: check how it is spelled$/],
  [{ 2: "1.5 L", 3: "2026-03-01" }, /^$/],
])("says beside a row of resin with %j what is wrong with it", (typed, words) => {
  const first = [...loads.sheet.cells].find(([, { value }]) => value === "resin by color")![0].split(",")[0];
  const row = { 1: "blue", 2: 3.6, 3: 46035, 4: 0.25, ...typed };
  const made = filled("Loads", { Loads: { [`@${Number(first) + 2}`]: row } });
  expect(made.value(Number(first) + 1, 10)).toMatch(words);
});

it("goes to paper on two pages: the plan, and what it takes", () => {
  const { print } = loads.sheet;
  expect(loads.value(print.newPage!, 1)).toBe("shopping list");
  expect(loads.value(print.newPage! - 1, 0)).toMatch(/^Likely bakes, min: load 1: \d+ to \d+, load 2: /);
});
