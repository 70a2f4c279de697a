import { hour, minute, momentOf, openFrom, serialOf } from "../../../src/run/hours";
import { problemsOf } from "../../../src/run/problems";
import { finish, start } from "../../../src/run/progress";
import { stepOf } from "../../../src/run/schema";
import { lengthOf, timeline } from "../../../src/run/timeline";
import { begunNow, demo, made, piece, telling } from "./run";

const load = { pieces: [piece(4)] };

it("counts days as spreadsheets do, in local time and back", () => {
  expect(serialOf(demo, 0)).toBeCloseTo(46095 + 14 / 24, 9);
  expect(momentOf(serialOf(demo, -300), -300)).toBe(demo);
});

it("waits for the shop to open, and begins nothing that would run past closing", () => {
  const hours = { opens: 8, closes: 20, offset: 0 };
  expect(openFrom(demo, 2 * hour, hours)).toBe(demo);
  expect(openFrom(demo, 7 * hour, hours)).toBe(demo + 18 * hour);
  expect(openFrom(demo - 8 * hour, hour, hours)).toBe(demo - 6 * hour);
  expect(openFrom(demo, 13 * hour, hours)).toBe(demo);
  expect(openFrom(demo, 2 * hour, { ...hours, offset: 300 })).toBe(demo + 13 * hour);
});

it("passes over days off, and says so where a person begins on one", () => {
  const daysOff = { weekdays: new Set([1]), dates: new Set([46097]), said: "Sun, 2026-03-16" };
  const hours = { opens: 8, closes: 20, offset: 0, daysOff };
  // From Saturday evening over Sunday and Monday, 16 March, to Tuesday at 8.
  expect(openFrom(demo, 7 * hour, hours)).toBe(demo + 66 * hour);
  const run = begunNow({ shop: [...made().shop, ["days off", "Sun"]] });
  expect(run.facts["days off"]).toBe("Sun");
  const spans = timeline(run);
  for (const { id, kind } of run.steps.filter(({ kind }) => ["drain", "bake", "weigh"].includes(kind)))
    expect([kind, new Date(spans.get(id)!.from).getUTCDay()]).not.toEqual([kind, 0]);
  const sunday = begunNow({ shop: [...made().shop, ["days off", "Sat"]] });
  expect(problemsOf(sunday, stepOf(sunday, "load-1"), demo - 4 * hour, telling)).toContain("My Shop has this as a day off.");
});

it("loads at the demo and has all before it done by then, at the latest that does", () => {
  const run = made();
  const spans = timeline(run);
  expect(spans.get("load-1")!.from).toBe(demo);
  expect(spans.get("mix")!.to).toBeLessThanOrEqual(demo);
  expect(demo - spans.get("choose")!.from).toBeLessThanOrEqual(55 * minute);
});

it("has load 1 cool and load 2 ready for the oven when the third goes in, one tub after another", () => {
  const spans = timeline(made({ loads: [load, load, load] }));
  expect(spans.get("load-3")!.from).toBe(demo);
  expect(spans.get("cool-1")!.to).toBeLessThanOrEqual(demo);
  expect(spans.get("drain-2")!.to).toBeLessThanOrEqual(demo);
  for (const number of [2, 3]) expect(spans.get(`load-${number}`)!.from).toBeGreaterThanOrEqual(spans.get(`drain-${number - 1}`)!.to);
});

it("takes two tubs under one vacuum, and soaks a tub beside the chamber", () => {
  const together = made({ loads: [load, load], together: 2 });
  expect(together.steps.filter(({ kind }) => kind === "vacuum").map(({ loads }) => loads)).toEqual([[1, 2]]);
  const tub = begunNow({ loads: [load, load], shop: [...made().shop] });
  const spans = timeline({ ...tub, facts: { ...tub.facts, tub: 6 } });
  expect(spans.get("load-2")!.from).toBeLessThan(spans.get("soak-1")!.to);
});

it("begins at once where it is to begin now, and drains when the shop is open", () => {
  const run = begunNow();
  const spans = timeline(run);
  expect(spans.get("choose")!.from).toBe(run.begins.at);
  const drained = new Date(spans.get("drain-1")!.from).getUTCHours();
  expect(drained).toBeGreaterThanOrEqual(8);
  for (const step of run.steps) expect(step.planned).toBe(spans.get(step.id)!.from);
});

it("goes by what was done when: a late step moves what follows, and a long vacuum makes a long soak", () => {
  let run = begunNow();
  const at = run.begins.at;
  for (const id of ["choose", "safety", "mix", "load-1"]) run = finish(run, id, at + hour);
  run = start(run, "vacuum-1", at + hour);
  expect(timeline(run, at + 2 * hour).get("vacuum-1")).toEqual({ from: at + hour, to: at + 5 * hour });
  run = finish(run, "vacuum-1", at + 7 * hour);
  expect(lengthOf(run, stepOf(run, "soak-1"))).toBe(12 * hour);
  expect(timeline(run, at + 7 * hour).get("air-1")!.from).toBe(at + 7 * hour);
});
