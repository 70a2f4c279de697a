import { inPractice } from "../../../../src/cure/ovenwords";
import { answers } from "../../../../src/run/answers";
import { runOf } from "../../../../src/run/making";
import { kindNames, kindOf } from "../../../../src/run/stepkinds";
import { ask, type Typed } from "../../../ask";
import { near } from "../../../within";
import { filled } from "../filled";

const shop: Typed = [
  ["scale reads", "g"],
  ["fullness", 0.55],
  ["altitude", 650],
];
const today = filled("Today");
const blanks = filled("Blanks");
const number = (label: string) => today.beside(label) as number;
const note = 6;

it("goes in the order of the work, as the run view does", () => {
  const rows = kindNames.map((kind, i) => today.rows(`${i + 1}. ${kindOf(kind).title}`)[0]);
  expect(rows.every((row) => row !== undefined)).toBe(true);
  expect(rows).toEqual([...rows].sort((a, b) => a - b));
  for (const kind of kindNames.slice(1)) expect(today.texts).toContain(kindOf(kind).caution);
});

it("answers as the functions do, and as the run view does for the same run", () => {
  const solids = 4 * 0.75 * 0.75 * 5;
  near(number("wood in the load"), solids);
  near(number("oven-dry weight"), 4 * 20.6, 1e-6);
  near(number("ballast, steel"), ask("BALLAST", solids, 82.4, undefined, shop) as number, 1e-6);
  near(number("deepest gauge reading here"), ask("FULLVACUUM", 650) as number);
  const piece = {
    name: "spalted boxelder",
    wood: "boxelder",
    count: 4,
    thickness: 0.75,
    width: 0.75,
    length: 5,
    dry: 20.6,
    fullness: blanks.under("fullness", 1)[0] as number,
  };
  const run = runOf(
    {
      ...{ id: "r", system: "US", chamber: 4, height: 10, color: "blue", together: 1, offset: 0 },
      shop: [
        ...(shop as [string, string | number][]),
        ["resin on hand", number("on hand")],
        ["resin mixed on", number("oldest part mixed on")],
      ],
      begins: { how: "demo", at: Date.UTC(2026, 2, 14, 14) },
      loads: [{ pieces: [piece] }],
    },
    answers,
  );
  expect(run.faults).toEqual({});
  const same = {
    "resin to pour": "pour 1",
    "bake, at the shortest": "bake least 1",
    "bake, at the longest": "bake most 1",
    "the resin’s own heat, at most": "rise 1",
    "resin the wood will take": "uptake 1",
    mix: "mix",
    "packets of catalyst": "packets",
    dye: "dye",
  };
  // The ends of the range count on the fullness of My Shop on the sheet.
  for (const [label, fact] of Object.entries({
    ...same,
    "gauge to go to": "gauge at least",
    bake: "bake 1",
    "ballast, steel": "ballast 1",
  }))
    near(number(label), run.facts[fact] as number, /longest|shortest/.test(label) ? 5e-3 : 1e-6);
  expect(today.beside("likely")).toBe(
    `${Math.round(number("bake, at the shortest"))} to ${Math.round(number("bake, at the longest"))} min`,
  );
});

it("says why a bake takes longer than people are used to, and nothing where it does not", () => {
  const why = (sheet: typeof today) => sheet.value(sheet.rows("the resin’s own heat, at most")[0] + 1, 0);
  expect(why(today)).toBe("");
  const thick = filled("Today", {
    Today: { [`@${today.rows("Load 1: pieces")[0] + 2}`]: { 0: "thick", 1: 1, 2: 1.5, 3: 1.5, 4: 5, 5: 0.45 } },
  });
  expect(why(thick)).toBe(inPractice);
});

it("is consistent as shipped: a few blanks in a narrow tub, covered by what the Resin Book has", () => {
  expect(number("on hand")).toBeCloseTo(3.6, 9);
  expect(number("mix")).toBe(0);
  expect(number("resin to pour")).toBeLessThan(number("on hand"));
  expect(today.value(3, 0)).toBe("4 pieces, 1 load: what is on hand is enough resin.");
  expect(number("done and cool by")).toBeCloseTo(number("day and hour") + 19.8 / 24, 1);
  const shown = [...today.sheet.cells.keys()].map((at) => today.value(...(at.split(",").map(Number) as [number, number])));
  expect(shown.filter((value) => typeof value === "object")).toEqual([]);
});

it("says in words what does not fit or is missing, and marks it", () => {
  const none = filled("Today", { Today: { "spalted boxelder": { 0: "teak" } } });
  const row = today.rows("Load 1: pieces")[0] + 1;
  expect(none.value(row, note)).toMatch(/^no such row on Blanks/);
  const many = filled("Today", { Today: { "spalted boxelder": { 1: 5000 } } });
  expect(many.value(row, note)).toMatch(/^Blanks has only \d+ of these$/);
  expect([...many.sheet.cells.keys()].map((at) => many.value(...(at.split(",").map(Number) as [number, number])))).toContain(
    "Some pieces below cannot go in: see “problem” in their row. Their load has no numbers until then.",
  );
  expect(many.beside("pieces")).toBe("");
  expect(filled("Today", { Today: { "height inside, in": 1 } }).beside("fits into one load")).toBe("no");
  const wet = filled("Today", { Today: { "spalted boxelder": { 0: "P-063" } } });
  expect(wet.value(row, note)).toBe("Blanks: too wet to take resin: dry it first");
  const missing = filled("Today", { Today: { "spalted boxelder": { 1: "" } } });
  expect(missing.value(row, note)).toBe("how many? type a whole number");
});

it("dates the resin by its oldest part, and says so where that is past before it is used up", () => {
  const onHand = (mixedOn: number | string) => filled("Today", { "My Shop": { "resin on hand": 3.6, "resin mixed on": mixedOn } });
  const old = onHand(45901);
  near(old.beside("use it all by") as number, ask("EXPIRY", 45901) as number);
  expect(old.beside("use it all by", note)).toMatch(/^expired by then/);
  expect(old.beside("on hand")).toBe(0);
  expect(old.beside("on hand", note)).toMatch(/^3\.60 qt on My Shop, but it expires/);
  expect(old.beside("mix", note)).toMatch(/^all of it fresh/);
  expect(old.beside("mix")).toBeGreaterThanOrEqual(old.beside("resin to pour") as number);
  expect(onHand("").value(1, 0)).toMatch(/the resin on hand has no date/);
  expect(onHand("").beside("oldest part mixed on", note)).toBe("");
  expect(onHand("").beside("use it all by")).toBe("");
  expect(today.beside("mix", note)).toMatch(/^whole packets/);
});

it("says first that a row takes another color of resin, and gives its load no numbers", () => {
  const row = today.rows("Load 1: pieces")[0] + 1;
  const other = blanks.under("color", 40).indexOf("red");
  const kind = blanks.under("kind", 40)[other] as string;
  const mixed = filled("Today", { Today: { [`@${row + 2}`]: { 0: kind, 1: 1 } } });
  expect(mixed.value(row, note)).toBe("");
  expect(mixed.value(row + 1, note)).toBe("color red here, blue above: one run takes one color of resin");
  expect(mixed.value(3, 0)).toMatch(/^Some pieces below cannot go in/);
  for (const label of ["resin to pour", "mix", "dye"]) expect(mixed.beside(label)).toBe("");
  const second = filled("Today", { Today: { [`@${today.rows("Load 2: pieces")[0] + 2}`]: { 0: kind, 1: 1 } } });
  expect(second.value(today.rows("Load 2: pieces")[0] + 1, note)).toMatch(/^color red here, blue above/);
  near(second.beside("resin to pour") as number, number("resin to pour"));
  expect(today.beside("color")).toBe("blue");
  expect(filled("Today", { Today: { color: "green" } }).beside("color", note)).toBe("for this run; Blanks has blue");
});

it("begins no vacuum behind a lid that is refused", () => {
  const thin = filled("Today", { "My Shop": { lid: 0.25, chamber: 24 } });
  expect(thin.beside("gauge to go to")).toBe("");
  expect(thin.beside("gauge to go to", note)).toMatch(/see the lid check/);
});

it("tells gain and fullness from three weights", () => {
  near(number("weight gain"), ask("WEIGHTGAIN", 82.4, 149.2) as number);
  near(number("lost in the oven"), ask("BAKELOSS", 82.4, 156.9, 149.2) as number);
  expect(filled("Today", { Today: { "weight drained, not yet baked": 10 } }).beside("fullness of the pores", note)).toMatch(
    /^a weight is missing/,
  );
});

it("draws the bake, for whoever cannot see it too", () => {
  const [, chart] = today.sheet.charts;
  expect(chart.alt).toMatch(/core .*surface/);
  expect(today.value(chart.across.row + chart.across.rows - 1, chart.across.column)).toBeCloseTo(number("bake"), 0);
});
