import { ask, type Typed } from "../../../ask";
import { near } from "../../../within";
import { filled } from "../filled";

const shop: Typed = [
  ["scale reads", "g"],
  ["fullness", 0.55],
  ["altitude", 650],
];
const today = filled("Today");
const number = (label: string) => today.beside(label) as number;

it("answers in the order of the work as the functions do", () => {
  const solids = 4 * number("wood in one piece");
  near(number("wood in the load"), solids);
  near(number("fluid the wood will take"), ask("UPTAKE", solids, number("gravity"), undefined, undefined, shop) as number);
  near(number("ballast, steel"), ask("BALLAST", solids, number("its oven-dry weight"), undefined, shop) as number);
  near(
    number("fluid to pour"),
    ask("FILL", 12, number("arrange: height of the stack"), number("wood and ballast"), number("fluid the wood will take")) as number,
  );
  near(number("deepest gauge reading here"), ask("FULLVACUUM", 650) as number);
  near(number("mixed today, use by"), ask("EXPIRY", Math.floor(number("it begins"))) as number);
  const labels = [
    "arrange: layers",
    "fluid to pour",
    "headroom for the foam",
    "time to pump it down",
    "mix",
    "dye in spoons",
    "done and cool by",
  ];
  const rows = labels.map((label) => today.rows(label)[0]);
  expect(rows).toEqual([...rows].sort((a, b) => a - b));
});

it("counts back from the hour of the demo: each step ends before the next begins, none while the shop is closed", () => {
  const top = today.rows("Backward from that hour")[0];
  const steps = Array.from({ length: 10 }, (_, i) => [1, 2].map((column) => today.value(top + 1 + i, column) as number));
  steps.forEach(([from, until], i) => {
    expect(from).toBeLessThan(until);
    if (i) expect(from).toBeGreaterThanOrEqual(steps[i - 1][1] - 1e-9);
  });
  expect(steps[9][0]).toBe(number("it begins"));
});

it("says in words what does not fit, and marks it", () => {
  const full = filled("Today", { Today: { "pieces in each of three loads": 5000 } });
  for (const label of ["arrange: upright or lying", "arrange: layers"]) expect(full.beside(label, 3)).toMatch(/^does not fit/);
  expect(full.beside("fluid to pour", 3)).toBe("");
  expect(today.alerts("arrange: upright or lying")[0]).toMatch(/^bad: IF\(ISERROR/);
});

it("says so where the kind is in no row of Blanks, and shows no error for it", () => {
  const none = filled("Today", { Today: { "kind to show": "teak" } });
  expect(none.beside("kind to show", 3)).toBe("no row of the sheet Blanks is called so");
  const values = [...none.sheet.cells.keys()].map((at) => none.value(...(at.split(",").map(Number) as [number, number])));
  expect(values.filter((value) => typeof value === "object")).toEqual([]);
});

it("has a box beside each step for what really was, and tells gain and fullness from three weights", () => {
  const box = (label: string) => today.sheet.cells.get(`${today.rows(label)[0]},4`)?.look;
  for (const label of ["fluid to pour", "gauge to go to", "time to pump it down", "dye", "done and cool by"])
    expect(box(label)).toBe("input");
  near(number("weight gain"), ask("WEIGHTGAIN", 82.4, 149.2) as number);
  near(number("lost in the oven"), ask("BAKELOSS", 82.4, 156.9, 149.2) as number);
  expect(filled("Today", { Today: { "weight drained, not yet baked": 10 } }).beside("fullness of the pores", 3)).toMatch(
    /^a weight is missing/,
  );
});

it("draws the bake, for whoever cannot see it too", () => {
  const [chart] = today.sheet.charts;
  expect(chart.alt).toMatch(/core .*surface/);
  expect(today.value(chart.across.row + chart.across.rows - 1, chart.across.column)).toBeCloseTo(number("bake"), 9);
});
