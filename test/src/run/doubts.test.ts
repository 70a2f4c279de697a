import { fresh, tick } from "../../../src/checklist/list";
import type { List } from "../../../src/checklist/schema";
import { doubtOf, itemsAt } from "../../../src/run/doubts";
import { hour, minute } from "../../../src/run/hours";
import { addReading, finish, start } from "../../../src/run/progress";
import { type Run, stepOf } from "../../../src/run/schema";
import { begunNow, piece, telling } from "./run";

const run = begunNow();
const at = run.begins.at;
const today = "2026-03-14";
const none: List = { ...fresh, now: { ...fresh.now, when: today } };
const all = none.items.reduce((list, { id }) => tick(list, id, true), none);
const doubt = (one: Run, id: string, now: number, list = all) => doubtOf(one, stepOf(one, id), { list, today, now, telling });

const upTo = (id: string, one = run): Run =>
  one.steps
    .slice(
      0,
      one.steps.findIndex((step) => step.id === id),
    )
    .reduce((so, step) => finish(so, step.id, at), one);

it.each([
  ["safety", ["safety"]],
  ["vacuum-1", ["mix", "vacuum"]],
  ["bake-1", ["bake"]],
] as const)("asks before %s while points of its part of the list are not checked, and tells how many", (id, kinds) => {
  const due = kinds.flatMap((kind) => itemsAt(none, kind));
  const one = upTo(id);
  expect(doubt(one, id, at, none)!.words[0]).toBe(`0 of ${due.length} points of the safety list are checked for this step.`);
  const some = tick(tick(none, due[0].id, true), due[1].id, true);
  expect(doubt(one, id, at, some)!.words[0]).toMatch(`2 of ${due.length} points`);
  expect(doubt(one, id, at, all)).toBeUndefined();
});

it("counts check marks of an earlier run as none", () => {
  const old = { ...all, now: { ...all.now, when: "2026-02-01" } };
  expect(doubt(upTo("safety"), "safety", at, old)!.words.join(" ")).toMatch(/^0 of .* from an earlier run/);
});

it("asks once, and not again at the next load", () => {
  const two = upTo("vacuum-2", begunNow({ loads: [{ pieces: [piece(2)] }, { pieces: [piece(2)] }] }));
  expect(doubt(two, "vacuum-2", at, none)).toBeUndefined();
});

it.each([
  [
    "vacuum-1",
    /^It has run for less than a minute; it usually takes 240 min\. No gauge reading is noted\. It should be at least 28\.\d inHg\./,
  ],
  ["soak-1", /^It has run for less than a minute; it takes at least 480 min\./],
  ["bake-1", /^It has run for less than a minute; it takes about \d+ min\. .*sticky/],
  ["cool-1", /^It has run for less than a minute; it takes about \d+ min\. .*burns/],
])("says what stands against ending %s at once, and nothing when its time is up", (id, words) => {
  const one = start(upTo(id), id, at);
  expect(doubt(one, id, at)!.words.join(" ")).toMatch(words);
  expect(doubt(one, id, at + 12 * hour)).toBeUndefined();
});

it("tells a gauge that is not deep enough, and is silent about one that is", () => {
  const one = start(upTo("vacuum-1"), "vacuum-1", at);
  const read = (gauge: number) => doubt(addReading(one, "vacuum-1", at + minute, gauge), "vacuum-1", at + hour)!.words.join(" ");
  expect(read(24)).toMatch(/last gauge reading is 24 inHg\. It should be at least 28\.\d inHg/);
  expect(read(29)).not.toMatch(/gauge/);
});

it("asks nothing of a step without a time, nor of one that is over", () => {
  for (const id of ["choose", "mix", "load-1", "air-1", "drain-1", "weigh-1", "price"])
    expect(doubt(upTo(id), id, at, none)).toBeUndefined();
  expect(doubt(finish(run, "safety", at), "safety", at, none)).toBeUndefined();
});
