import { type Clock, slack } from "./clock";

/** What the schedule needs to know of a load. */
export interface Job {
  readonly color: number;
  readonly need: number;
  /** Seconds to wrap all of it. */
  readonly wrap: number;
  /** Seconds that each batch bakes. */
  readonly batches: readonly number[];
}

/** How long each job takes, in seconds. */
export interface Pace {
  /** To load a tub, and again to take out. */
  readonly loading: number;
  readonly vacuum: number;
  readonly soak: number;
}

export interface Vessels {
  readonly abreast: number;
  readonly many: number;
  readonly beside: boolean;
}

/** The choices of a schedule: how many loads a pull waits for, and whether it is loaded before the pieces just taken out are wrapped. */
export interface Habit {
  readonly least: number;
  readonly between: boolean;
}

export interface Times {
  /** Number of the pull, from 0. */
  readonly pull: number;
  /** Its loading begins. */
  readonly from: number;
  /** The vacuum begins. */
  readonly in: number;
  /** Taking out begins. */
  readonly out: number;
  /** Wrapping begins and ends. */
  readonly wrapping: number;
  readonly wrapped: number;
  /** Each batch starts. */
  readonly starts: readonly number[];
  /** The last batch ends. */
  readonly done: number;
}

interface Soaking {
  readonly job: number;
  readonly pull: number;
  readonly from: number;
  readonly in: number;
  readonly ready: number;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/**
 * Every load's times, jobs in the order in which they are to go in. One chamber, one oven, one person: soaked pieces come
 * out as soon as all that follows fits into the day, else the next pull goes in, else the person waits.
 */
export function schedule(
  jobs: readonly Job[],
  start: number,
  clock: Clock,
  pace: Pace,
  vessels: Vessels,
  most: number,
  habit: Habit,
): Times[] {
  const { loading, vacuum, soak } = pace;
  const times: Times[] = new Array(jobs.length);
  const baking = jobs.map(({ batches }) => sum(batches));
  const short = jobs.map(({ wrap }, i) => loading + wrap + baking[i] <= clock.hours + slack);
  const standing = new Map<number, number>();
  const waiting = jobs.map((_, i) => i);
  let head = 0;
  const gone = new Uint8Array(jobs.length);
  let left = jobs.length;
  let soaking: Soaking[] = [];
  let chamberFree = start;
  let tubsFree = vessels.many;
  let ovenFree = Number.NEGATIVE_INFINITY;
  let pulls = 0;
  let now = clock.first(start, 0);

  /** The loads that a pull would take at a moment, in order, as many as stand in the chamber and as the limit lets. */
  const pullAt = (at: number): number[] => {
    if (left === 0 || chamberFree > at + slack || tubsFree < 1) return [];
    const room = clock.closing(at) - at - vacuum + slack;
    const byClock = loading > 0 ? Math.floor(room / loading + 1e-9) : room >= 0 ? jobs.length : 0;
    const many = Math.min(vessels.abreast, tubsFree, byClock);
    const picks: number[] = [];
    const asked = new Map<number, number>();
    while (head < waiting.length && gone[head]) head++;
    for (let i = head; i < jobs.length && picks.length < many; i++) {
      if (gone[i]) continue;
      const { color, need } = jobs[i];
      const there = (standing.get(color) ?? 0) + (asked.get(color) ?? 0);
      if (there > 0 && there + need > most * (1 + 1e-9)) {
        if (most === Number.POSITIVE_INFINITY || i - head > 200) break;
        continue;
      }
      asked.set(color, (asked.get(color) ?? 0) + need);
      picks.push(i);
    }
    const due = Math.min(
      habit.least,
      left,
      vessels.abreast,
      loading > 0 ? Math.floor((clock.hours - vacuum + slack) / loading) : habit.least,
    );
    return picks.length < due && soaking.length > 0 ? [] : picks;
  };

  const load = (picks: readonly number[], from: number): void => {
    const begin = from + picks.length * loading;
    for (const job of picks) {
      const { color, need } = jobs[job];
      gone[job] = 1;
      standing.set(color, (standing.get(color) ?? 0) + need);
      soaking.push({ job, pull: pulls, from, in: begin, ready: begin + vacuum + soak });
    }
    left -= picks.length;
    tubsFree -= picks.length;
    chamberFree = vessels.beside ? begin + vacuum : Number.POSITIVE_INFINITY;
    pulls++;
  };

  /** Whether all that follows taking out fits into the day when wrapping begins at a moment. */
  const fits = (job: number, wrapping: number): boolean => {
    const ends = Math.max(wrapping + jobs[job].wrap, ovenFree) + (short[job] ? baking[job] : jobs[job].batches[0]);
    return ends <= clock.closing(now) + slack;
  };

  const takeOut = (one: Soaking): void => {
    const { job, pull, from } = one;
    const { color, need, wrap, batches } = jobs[job];
    soaking = soaking.filter((other) => other !== one);
    const out = now;
    let free = out + loading;
    standing.set(color, Math.max(0, standing.get(color)! - need));
    tubsFree++;
    if (!vessels.beside) chamberFree = free;
    if (habit.between) {
      const picks = pullAt(free);
      const later = free + picks.length * loading;
      if (picks.length && fits(job, later)) {
        load(picks, free);
        free = later;
      }
    }
    const wrapped = free + wrap;
    let at = Math.max(wrapped, ovenFree);
    const starts = batches.map((bake) => {
      const begin = clock.first(at, bake);
      at = begin + bake;
      return begin;
    });
    ovenFree = at;
    times[job] = { pull, from, in: one.in, out, wrapping: free, wrapped, starts, done: at };
    now = wrapped;
  };

  while (left > 0 || soaking.length > 0) {
    const ripe = soaking.find(
      ({ job, ready }) => ready <= now + slack && now + loading <= clock.closing(now) + slack && fits(job, now + loading),
    );
    if (ripe) {
      takeOut(ripe);
      continue;
    }
    const picks = pullAt(now);
    if (picks.length) {
      const from = now;
      load(picks, from);
      now = from + picks.length * loading;
      continue;
    }
    let next = clock.nextOpening(now);
    for (const { ready } of soaking) if (ready > now + slack) next = Math.min(next, ready);
    if (chamberFree > now + slack) next = Math.min(next, chamberFree);
    now = next;
  }
  return times;
}
