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
  near(number("use all of it by"), ask("EXPIRY", Math.floor(number("it begins"))) as number);
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

const onHand = (mixedOn: number | undefined) => filled("Today", { "My Shop": { "resin on hand": 3.6, "resin mixed on": mixedOn } });

it("dates the fluid by its oldest part, and says so where that is past before it is used up", () => {
  const old = onHand(45901);
  expect(old.beside("oldest part mixed on")).toBe(45901);
  near(old.beside("use all of it by") as number, ask("EXPIRY", 45901) as number);
  expect(old.beside("use all of it by", 3)).toMatch(/^out of date by then/);
  expect(old.beside("mix", 3)).toMatch(/^counts on resin that is out of date/);
  expect(old.alerts("use all of it by")[0]).toMatch(/^bad: OR\(.*<INT\(/);
  // Good on the morning of the demo, and no more when the soak ends the next day.
  expect(onHand(46095 - 90).beside("use all of it by", 3)).toMatch(/^out of date/);
  const young = onHand(46095 - 30);
  expect(young.beside("use all of it by", 3)).toMatch(/^warmth/);
  expect(young.beside("mix", 3)).toMatch(/^whole packets/);
  expect(onHand(undefined).beside("oldest part mixed on", 3)).toMatch(/no date on My Shop/);
  expect(number("oldest part mixed on")).toBe(number("it begins"));
});

it("gives resin of unknown or impossible age no day to be used by", () => {
  const undated = filled("Today", { "My Shop": { "resin on hand": 2, "resin mixed on": "" } });
  expect(undated.beside("oldest part mixed on")).toBe("");
  expect(undated.beside("use all of it by")).toBe("");
  expect(undated.beside("mix", 3)).toMatch(/^counts on resin that/);
  const ahead = filled("Today", { "My Shop": { "resin on hand": 2, "resin mixed on": 46196 } });
  expect(ahead.beside("oldest part mixed on", 3)).toMatch(/dated after the demo/);
});

it("begins no pumping behind a lid that is refused", () => {
  const thin = filled("Today", { "My Shop": { lid: 0.25, chamber: 24 } });
  expect(thin.beside("lid")).toMatch(/^do not pump/);
  expect(thin.alerts("lid")).toEqual([expect.stringMatching(/^bad: LEFT/)]);
  for (const label of ["gauge to go to", "time to pump it down", "air out of the pores by then"]) expect(thin.beside(label)).toBe("");
  expect(number("gauge to go to")).toBeGreaterThan(20);
});

it("loads before it pumps, and keeps the vacuum within the hours", () => {
  const [start, loading, vacuum] = ["it begins", "loading, and again taking out", "vacuum"].map(number);
  near(number("vacuum until"), start + (loading + vacuum) / 24, 1e-12);
  const kept = (hour: number) => {
    const { rows, value } = filled("Today", { Today: { "it begins": 46095 + hour / 24 } });
    return value(rows("the demo")[0] + 1, 0);
  };
  expect(kept(14)).toMatch(/^Every step/);
  expect(kept(17)).toMatch(/^Loading and vacuum of load 3 run outside/);
  expect(kept(6)).toMatch(/^Loading and vacuum of load 3 run outside/);
  // Also where no calculation says how long the oven takes.
  const thick = filled("Today", {
    Today: { "it begins": 46095 + 19 / 24 },
    Blanks: { "spalted boxelder": { 2: 3, 3: 3 } },
  });
  expect(thick.beside("get ready, bake and cool one load")).toBe("");
  expect(thick.value(thick.rows("the demo")[0] + 1, 0)).toMatch(/^Loading and vacuum of load 3 run outside/);
});

it("speaks of foil only where the bake is reckoned in foil", () => {
  for (const [way, words] of [
    ["foil", /wrapped in foil/],
    ["spaced", /^bare and spaced, as/],
    ["fan", /^bare and spaced, with a fan/],
  ] as const) {
    const { beside } = filled("Today", { "My Shop": { "in the oven": way } });
    expect(beside("get ready, bake and cool one load", 3)).toMatch(words);
    expect(beside("get ready and bake from", 3)).toMatch(words);
  }
  expect(today.texts.filter((text) => /wrap/i.test(text))).toEqual([]);
});

it("repeats what Blanks has against the kind, and marks it", () => {
  const wet = filled("Today", { Today: { "kind to show": "P-063" } });
  expect(wet.beside("kind to show", 3)).toBe("Blanks says: too wet to take resin: dry it first");
  expect(wet.alerts("kind to show")[0]).toMatch(/^bad: .*"Blanks says"/);
});

it("takes the table's weight for a kind that nobody weighed, and says so", () => {
  const { beside } = filled("Today", { Blanks: { "spalted boxelder": { 7: undefined, 8: undefined } } });
  near(beside("oven-dry, one piece") as number, (beside("gravity") as number) * (beside("wood in one piece") as number) * 16.387064, 1e-9);
  expect(beside("oven-dry, one piece", 3)).toMatch(/^not weighed/);
  expect(today.beside("oven-dry, one piece", 3)).toBe("weighed");
  expect(beside("fluid to pour")).toEqual(expect.any(Number));
});

it("marks a soak too short and a gauge too deep, and asks for no loads of no kind", () => {
  expect(filled("Today", { "My Shop": { "soak hours": 2 } }).beside("soak", 3)).toMatch(/^less than twice/);
  expect(today.beside("soak", 3)).toMatch(/^My Shop/);
  expect(filled("Today", { Today: { "gauge to go to": 29.9 } }).beside("gauge to go to", 3)).toMatch(/^deeper than/);
  expect(today.beside("gauge to go to", 3)).toMatch(/^97 %/);
  expect(filled("Today", {}, "US", "empty").beside("pieces in each of three loads", 3)).toBe("");
});
