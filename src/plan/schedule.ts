import { type Clock, slack } from "./clock";

/** What the clock needs to know of a load. */
export interface Job {
  readonly count: number;
  /** Seconds that a batch bakes. */
  readonly bake: number;
  readonly batches: number;
}

/** Seconds that things take. */
export interface Pace {
  /** To load the chamber, and again to take out. */
  readonly loading: number;
  readonly vacuum: number;
  readonly soak: number;
  /** To wrap one piece. */
  readonly wrap: number;
}

export interface Times {
  /** The vacuum begins. */
  readonly in: number;
  /** Taking out begins. */
  readonly out: number;
  /** The first batch starts. */
  readonly toOven: number;
  /** The last batch ends. */
  readonly done: number;
}

type Span = readonly [from: number, to: number];

/** One load after another through the chamber; only soaking runs past closing. */
function chamberSpans(loads: number, from: number, clock: Clock, { loading, vacuum, soak }: Pace): Span[] {
  const spans: Span[] = [];
  let free = from;
  for (let i = 0; i < loads; i++) {
    const vacuumOn = clock.first(free, loading + vacuum) + loading;
    const out = clock.first(vacuumOn + vacuum + soak, loading);
    spans.push([vacuumOn, out]);
    free = out + loading;
  }
  return spans;
}

/**
 * When the person is through wrapping each load. The chamber comes first: wrapping gives way to taking out and loading,
 * and stops at closing.
 */
function wrapped(jobs: readonly Job[], spans: readonly Span[], clock: Clock, { loading, wrap }: Pace): number[] {
  const busy = spans.flatMap(([vacuumOn, out]): Span[] => [
    [vacuumOn - loading, vacuumOn],
    [out, out + loading],
  ]);
  let next = 0;
  let now = 0;
  return jobs.map(({ count }, i) => {
    now = Math.max(now, spans[i][1] + loading);
    let work = count * wrap;
    for (; next < busy.length; next++) {
      const [from, to] = busy[next];
      if (to <= now + slack) continue;
      const open = from <= now + slack ? 0 : clock.between(now, from);
      if (from > now + slack && work <= open + slack) break;
      work -= open;
      now = to;
    }
    if (work > 0) now = clock.after(now, work);
    return now;
  });
}

/** Every load's times, the first not before `from`. One load in the chamber, one batch in the oven, one person. */
export function schedule(jobs: readonly Job[], from: number, clock: Clock, pace: Pace): Times[] {
  const spans = chamberSpans(jobs.length, from, clock, pace);
  const ready = wrapped(jobs, spans, clock, pace);
  let ovenFree = 0;
  return jobs.map(({ bake, batches }, i) => {
    const toOven = clock.first(Math.max(ready[i], ovenFree), bake);
    ovenFree = toOven + bake;
    for (let batch = 1; batch < batches; batch++) ovenFree = clock.first(ovenFree, bake) + bake;
    return { in: spans[i][0], out: spans[i][1], toOven, done: ovenFree };
  });
}
