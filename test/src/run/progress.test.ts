import { hour } from "../../../src/run/hours";
import { addReading, current, dropReading, enter, finish, isFinished, isOpen, reopen, start } from "../../../src/run/progress";
import { stepOf } from "../../../src/run/schema";
import { begunNow, piece } from "./run";

const run = begunNow();
const at = run.begins.at;

it("offers one step after another, to the end of the run", () => {
  let now = at;
  let one = run;
  const seen: string[] = [];
  while (!isFinished(one)) {
    const [step] = current(one, now);
    seen.push(step.id);
    now += hour;
    one = finish(one, step.id, now);
  }
  expect(seen).toEqual(run.steps.map(({ id }) => id));
  expect(current(one, now)).toEqual([]);
});

it("begins soaking and cooling by themselves, and puts what waits for a hand before what runs by itself", () => {
  let two = begunNow({ loads: [{ pieces: [piece(2)] }, { pieces: [piece(2)] }] });
  two = { ...two, facts: { ...two.facts, tub: 6 } };
  for (const id of ["choose", "safety", "mix", "load-1", "vacuum-1", "air-1"]) two = finish(two, id, at + hour);
  expect(stepOf(two, "soak-1").started).toBe(at + hour);
  expect(current(two, at + hour).map(({ id }) => id)).toEqual(["load-2", "soak-1"]);
});

it("takes a touch back, and with it what began by itself", () => {
  let one = run;
  for (const id of ["choose", "safety", "mix", "load-1"]) one = finish(one, id, at + hour);
  one = start(one, "vacuum-1", at + hour);
  one = finish(one, "vacuum-1", at + 2 * hour);
  const air = finish(start(one, "air-1", at + 2 * hour), "air-1", at + 3 * hour);
  const back = reopen(air, "air-1");
  expect(stepOf(back, "soak-1").started).toBeUndefined();
  expect(stepOf(back, "air-1").done).toBeUndefined();
  const running = reopen(one, "vacuum-1");
  expect(stepOf(running, "vacuum-1")).toMatchObject({ started: at + hour, done: undefined });
  expect(isOpen(running, stepOf(running, "air-1"))).toBe(false);
  expect(stepOf(reopen(running, "vacuum-1"), "vacuum-1").started).toBeUndefined();
});

it("keeps what was weighed and read, and counts its changes", () => {
  const entered = enter(enter(run, "poured 1", 3.2), "drained 1", 90);
  expect(entered.entries).toEqual({ "poured 1": 3.2, "drained 1": 90 });
  expect(enter(entered, "poured 1", undefined).entries).toEqual({ "drained 1": 90 });
  expect(entered.revision).toBe(run.revision + 2);
  const read = addReading(addReading(run, "vacuum-1", at, 28), "vacuum-1", at + 60_000, 27.5);
  expect(dropReading(read, 0).readings).toEqual([{ step: "vacuum-1", at: at + 60_000, gauge: 27.5 }]);
});
