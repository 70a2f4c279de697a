import fc from "fast-check";
import { clockOf } from "../../../src/plan/clock";
import { type Job, schedule } from "../../../src/plan/schedule";

const minute = 60;
const dayLong = 1440;
const clock = (opens: number, closes: number) => clockOf(opens * 3600, closes * 3600);

/** A plan whose times are told as "day hour:minute". */
function told(jobs: [count: number, bake: number, batches: number][], opens: number, closes: number, pace: number[], from = 0): string[] {
  const [loading, vacuum, soak, wrap] = pace.map((minutes) => minutes * minute);
  const times = schedule(
    jobs.map(([count, bake, batches]) => ({ count, bake: bake * minute, batches })),
    from * minute,
    clock(opens, closes),
    { loading, vacuum, soak, wrap },
  );
  const say = (seconds: number) => {
    const minutes = Math.round(seconds / minute);
    const part = (n: number) => String(n).padStart(2, "0");
    return `${Math.floor(minutes / dayLong)} ${part(Math.floor((minutes % dayLong) / 60))}:${part(minutes % 60)}`;
  };
  return times.map(({ in: vacuumOn, out, toOven, done }) => [vacuumOn, out, toOven, done].map(say).join(", "));
}

describe("the schedule", () => {
  it("makes one load a day with 30 minutes of loading, 4 hours of vacuum and 8 of soaking", () =>
    expect(
      told(
        [
          [30, 42, 1],
          [30, 42, 1],
        ],
        8,
        20,
        [30, 240, 480, 1],
      ),
    ).toEqual([
      // 8:00 loading, 8:30 vacuum, 12:30 soaking, 20:30 done: out in the morning; loads the next until 9:00, wraps until 9:30.
      "0 08:30, 1 08:00, 1 09:30, 1 10:12",
      // 9:00 + 12 h = 21:00, out in the morning; nothing left to load: wraps from 8:30.
      "1 09:00, 2 08:00, 2 09:00, 2 09:42",
    ]));

  it("makes two loads a day where the vacuum still fits, and wraps in what is left of the person's time", () =>
    expect(
      told(
        [
          [10, 60, 1],
          [10, 60, 1],
          [10, 60, 1],
        ],
        8,
        18,
        [30, 120, 240, 20],
      ),
    ).toEqual([
      // 8:30 + 6 h = 14:30; 15:30 to 17:30 is the next vacuum. Wraps 15:30 to 18:00 (150 of 200 min); next day takes out and
      // loads until 9:00, wraps the other 50.
      "0 08:30, 0 14:30, 1 09:50, 1 10:50",
      // 15:30 + 6 h = 21:30. Wraps 9:50 to 13:10.
      "0 15:30, 1 08:00, 1 13:10, 1 14:10",
      // 9:00 + 6 h = 15:00. Wraps 15:30 to 18:00 and 8:00 to 8:50.
      "1 09:00, 1 15:00, 2 08:50, 2 09:50",
    ]));

  it("bakes whole batches within open hours", () =>
    expect(told([[10, 100, 3]], 8, 18, [30, 60, 300, 0], 8 * 60)).toEqual([
      // Out 14:30, baking from 15:00: 16:40 and no second batch past 18:00; 8:00 to 9:40 and to 11:20.
      "0 08:30, 0 14:30, 0 15:00, 1 11:20",
    ]));

  it("loads in the morning when the person comes too late for the vacuum to end by closing", () =>
    expect(told([[1, 30, 1]], 8, 20, [30, 240, 480, 0], 15.6 * 60)[0]).toMatch(/^1 08:30/));

  it("takes out when somebody is there", () =>
    expect(told([[1, 30, 1]], 8, 20, [30, 240, 480, 0], 8 * 60)[0]).toMatch(/^0 08:30, 1 08:00/));

  it("does no work in no time", () =>
    expect(told(Array(3).fill([1, 0, 1]), 8, 20, [0, 0, 0, 0])).toEqual(Array(3).fill("0 08:00, 0 08:00, 0 08:00, 0 08:00")));

  it("agrees with a clerk who walks minute by minute", () => {
    const task = fc.record({
      count: fc.integer({ min: 1, max: 30 }),
      bake: fc.integer({ min: 1, max: 120 }),
      batches: fc.integer({ min: 1, max: 4 }),
    });
    fc.assert(
      fc.property(
        fc.array(task, { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 4, max: 24 }),
        fc.record({
          loading: fc.integer({ min: 1, max: 60 }),
          vacuum: fc.integer({ min: 0, max: 180 }),
          soak: fc.integer({ min: 0, max: 900 }),
          wrap: fc.integer({ min: 0, max: 40 }),
        }),
        fc.integer({ min: 0, max: 2880 }),
        (jobs, opens, long, pace, from) => {
          const closes = Math.min(24, opens + long);
          const made = schedule(
            jobs.map((job) => ({ ...job, bake: job.bake * minute })),
            from * minute,
            clock(opens, closes),
            { loading: pace.loading * minute, vacuum: pace.vacuum * minute, soak: pace.soak * minute, wrap: pace.wrap * minute },
          ).map((times) => Object.values(times).map((seconds) => Math.round(seconds / minute)));
          expect(made).toEqual(walked(jobs, from, opens * 60, closes * 60, pace));
        },
      ),
      { numRuns: 300 },
    );
  });
});

/** The same plan in whole minutes, found by trying every minute. */
function walked(jobs: readonly Job[], from: number, opens: number, closes: number, pace: Record<string, number>): number[][] {
  const isOpen = (moment: number) => moment % dayLong >= opens && moment % dayLong < closes;
  const lies = (moment: number, lasting: number) => {
    const midnight = Math.floor(moment / dayLong) * dayLong;
    return moment >= midnight + opens && moment + lasting <= midnight + closes;
  };
  const first = (moment: number, lasting: number) => {
    let tried = moment;
    while (!lies(tried, lasting)) tried++;
    return tried;
  };
  const busy = new Set<number>();
  const keep = (moment: number) => {
    for (let m = moment; m < moment + pace.loading; m++) busy.add(m);
  };
  let free = from;
  const spans = jobs.map(() => {
    const loads = first(free, pace.loading + pace.vacuum);
    const out = first(loads + pace.loading + pace.vacuum + pace.soak, pace.loading);
    keep(loads);
    keep(out);
    free = out + pace.loading;
    return [loads + pace.loading, out];
  });
  let now = 0;
  let oven = 0;
  return jobs.map(({ count, bake, batches }, i) => {
    now = Math.max(now, spans[i][1] + pace.loading);
    while (busy.has(now)) now++;
    for (let work = count * pace.wrap; work > 0; now++) if (isOpen(now) && !busy.has(now)) work--;
    let toOven: number | undefined;
    oven = Math.max(oven, now);
    for (let batch = 0; batch < batches; batch++) {
      const start = first(oven, bake);
      toOven ??= start;
      oven = start + bake;
    }
    return [...spans[i], toOven!, oven];
  });
}
