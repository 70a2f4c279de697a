import { badInput, noAnswer, said } from "../../shared/outcome";
import type { Piece } from "../chamber/layers";
import { coreTarget } from "../cure/heating";
import { type Entry, enter, type Tub } from "./books";
import { type Clock, clockOf, day, slack } from "./clock";
import type { Given } from "./given";
import { balanced, type Load, refuseEndless } from "./loads";
import type { Unplanned } from "./pieces";
import { schedule, type Times } from "./schedule";
import { sizesOf } from "./sizes";

/** A load with its books, and its times as spreadsheet days. */
export interface Planned extends Load, Entry, Times {
  readonly batches: number;
  /** Seconds from in to out. */
  readonly inChamber: number;
}

export interface Plan {
  readonly loads: readonly Planned[];
  readonly unplanned: readonly Unplanned[];
  /** Mixed resin that stands there in the end. */
  readonly left: number;
}

/** The last moment a spreadsheet knows: the end of 31 December 9999; and the first that all of them agree on. */
const lastDay = 2958466;
const firstDay = 61;

/** A value between 0 and 1 is a clock time, anything else an hour. */
const secondsOf = (hour: number): number => (hour < 1 ? hour * day : hour * 3600);

function openHours({ opens, closes, loadingMinutes, vacuumHours }: Given): Clock {
  const [from, to] = [secondsOf(opens), secondsOf(closes)];
  if (to <= from) throw badInput`closes must be later than opens: type hours such as 8 and 20`;
  const attended = loadingMinutes + vacuumHours;
  if (attended > to - from + slack)
    throw noAnswer`loading and vacuum take ${said("hours", attended)}, and somebody is there for ${said("hours", to - from)}: vacuum is never left alone`;
  return clockOf(from, to);
}

/** The day that the clock's first midnight begins; none where the plan has no dates. */
function firstMidnight({ start, readyBy }: Given, done: number): number | undefined {
  if (start !== undefined) return Math.floor(start);
  if (readyBy === undefined) return undefined;
  const latest = Math.floor(readyBy - done / day + 1e-9);
  if (latest < firstDay) throw noAnswer`ready by is too early: the plan takes ${Math.ceil(done / day)} days`;
  return latest;
}

/** Milliseconds are finer than a serial holds: rounding to them takes its noise off. */
const timeOfDay = (serial: number): number => Math.round((serial - Math.floor(serial)) * day * 1000) / 1000;

export const facesOf = ({ thickness, width, length }: Piece): number => 2 * (thickness * width + thickness * length + width * length);

type Job = Load & { readonly bake: number; readonly batches: number };

const jobOf = (load: Load): Job => ({ ...load, bake: load.size.bake, batches: Math.ceil(load.count / load.size.batch) });

/** Every load's books, one after another out of the same tub. */
function booked(jobs: readonly Job[], times: readonly Times[], midnight: number | undefined, given: Given): Planned[] {
  const serial = (seconds: number) => (midnight ?? 0) + seconds / day;
  let tub: Tub = {
    fluid: given.resinOnHand,
    strength: given.resinDyeRate,
    since: given.resinOnHand > 0 && midnight !== undefined ? (given.resinMixedOn ?? midnight) : undefined,
  };
  return jobs.map((job, i) => {
    const { in: vacuumOn, out, toOven, done } = times[i];
    const at = { in: serial(vacuumOn), out: serial(out), toOven: serial(toOven), done: serial(done) };
    const { fluid } = job.arrangement;
    const drips = given.drips * facesOf(job.size.piece) * job.count;
    const entered = enter(tub, { fluid, uptake: job.uptake, drips, days: midnight === undefined ? undefined : at }, given);
    tub = entered.tub;
    return { ...job, ...entered.entry, ...at, inChamber: out - vacuumOn };
  });
}

/** The whole plan, from the pieces to the last batch. */
export function planned(given: Given): Plan {
  const clock = openHours(given);
  coreTarget(given.oven, given.room, given.core);
  const { sizes, unplanned } = sizesOf(given.pieces.rows, { ...given, hours: clock.hours });
  refuseEndless(sizes);
  const jobs = sizes.flatMap((size) => balanced(size, given.fullness)).map(jobOf);

  const { loadingMinutes: loading, vacuumHours: vacuum, soakHours: soak, wrapMinutesPerPiece: wrap } = given;
  const from = given.start === undefined ? clock.opens : timeOfDay(given.start);
  const times = schedule(jobs, from, clock, { loading, vacuum, soak, wrap });
  const done = times.at(-1)?.done ?? 0;
  const midnight = firstMidnight(given, done);
  if ((midnight ?? 0) + done / day > lastDay) throw noAnswer`the plan runs past the year 9999: plan fewer pieces at a time`;

  const loads = booked(jobs, times, midnight, given);
  return {
    loads,
    unplanned: [...given.pieces.unplanned, ...unplanned].sort((a, b) => a.index - b.index),
    left: loads.at(-1)?.left ?? given.resinOnHand,
  };
}
