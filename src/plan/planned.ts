import { dequal } from "dequal";
import { noAnswer } from "../../shared/outcome";
import { coreTarget } from "../cure/heating";
import { bestOf } from "./best";
import { clockFrom, firstDay, lastDay, openHours, timeOfDay } from "./calendar";
import { type Clock, day, dayOf, slack } from "./clock";
import { colorsOf, type PlanColor } from "./colors";
import { noDaysOff } from "./daysoff";
import type { Given } from "./given";
import type { Load } from "./loads";
import type { Day } from "./order";
import { partsOf } from "./parts";
import type { Unplanned } from "./pieces";
import type { Times } from "./pulls";
import { refuseEndless, setsOf } from "./sets";
import type { Entry, Stock } from "./stock";
import { type Tub, tubOf } from "./tub";

/** A load with its times, in seconds from the midnight before day 1, and what it takes from its stock. */
export interface Planned extends Load, Times, Entry {
  readonly colorName: string;
}

export type ColorStock = PlanColor & Stock;

/** A whole plan. Amounts in SI units, moments in seconds from the midnight before day 1. */
export interface Plan {
  readonly tub: Tub;
  /** In the order in which they go in. */
  readonly loads: readonly Planned[];
  readonly pulls: number;
  readonly colors: readonly ColorStock[];
  readonly unplanned: readonly Unplanned[];
  /** Serial of day 1; undefined in a plan without dates. */
  readonly midnight: number | undefined;
  readonly clock: Clock;
  /** When the last load is done; undefined where nothing is planned. */
  readonly done: number | undefined;
  /** Calendar days, the first and the last among them. */
  readonly days: number;
  /** Resin on hand that none of the colors may use. */
  readonly unused: number;
}

/** Latest day on which a plan that must be ready in time can begin. */
function latestStart(
  readyBy: number,
  from: number,
  doneFrom: (midnight: number | undefined) => number,
  isOff: (serial: number) => boolean,
): number {
  const shortest = doneFrom(undefined) / day;
  let at = Math.floor(readyBy - shortest + 1e-9);
  for (; at >= firstDay; at--) {
    if (isOff(at) || at + from / day > readyBy) continue;
    if (at + doneFrom(at) / day <= readyBy + 1e-9) return at;
  }
  throw noAnswer`ready by is too early: the plan takes ${Math.ceil(shortest)} days`;
}

let last: { readonly given: Given; readonly plan: Plan } | undefined;

/** The plan, from the pieces to the last batch. Several cells of a sheet ask for the same plan, so it is remembered. */
export function planOf(given: Given): Plan {
  if (!last || !dequal(last.given, given)) last = { given, plan: planIn(given)! };
  return last.plan;
}

/** The same; undefined as soon as the limit on resin leaves out more rows than allowed. */
export function planIn(given: Given, mayLose = Number.POSITIVE_INFINITY): Plan | undefined {
  const { from: opens, hours } = openHours(given);
  coreTarget(given.oven, given.room, given.core);
  const tub = tubOf(given);
  const shop = { ...given, hours };
  const { shapes, parts, unplanned } = partsOf(given.pieces.rows, tub, shop);
  refuseEndless(parts);
  const { start, readyBy } = given;
  const dated = start !== undefined || readyBy !== undefined;
  const { colors: all, unused } = colorsOf(parts, given, dated);
  const typed = given.order === "as typed";
  const most = given.mostResin ?? Number.POSITIVE_INFINITY;
  const limits = most === Number.POSITIVE_INFINITY ? [most] : Array.from({ length: Math.min(tub.many, 4) }, (_, i) => most / (i + 1));
  const lists = all.map((color) => color.parts);
  const known = given.pieces.unplanned.length + unplanned.length;
  const first = setsOf(lists, shapes, tub, shop, limits[0], typed, mayLose - known);
  if (!first) return undefined;
  const { unplanned: over } = first;
  const shares = limits.slice(1).flatMap((limit) => setsOf(lists, shapes, tub, shop, limit, typed, over.length) ?? []);
  const sets = [first, ...shares].flatMap(({ best, inTurn }) => [...(typed && inTurn ? [] : best), ...(inTurn ? [inTurn] : [])]);
  const lost = new Set(over.map(({ index }) => index));
  const colors = lost.size ? all.map((color) => ({ ...color, parts: color.parts.filter(({ row }) => !lost.has(row.index)) })) : all;

  const dayFrom = (midnight: number | undefined, from: number): Day => ({
    start: from,
    clock: clockFrom(given, midnight),
    pace: { loading: given.loadingMinutes, vacuum: given.vacuumHours, soak: given.soakHours },
    wrap: given.wrapMinutesPerPiece,
    vessels: tub,
    mostResin: most,
  });
  const found = (midnight: number | undefined, from: number) => bestOf(sets, colors, dayFrom(midnight, from), given, midnight);
  const rows = [...given.pieces.unplanned, ...unplanned, ...over].sort((a, b) => a.index - b.index);
  if (!parts.length || !sets.some(({ length }) => length)) {
    const midnight = start === undefined ? undefined : Math.floor(start);
    const stocks = all.map((color) => ({ ...color, entries: [], left: color.begin.volume, discarded: 0 }));
    const clock = clockFrom(given, midnight ?? (readyBy && Math.floor(readyBy)));
    return { tub, loads: [], pulls: 0, colors: stocks, unplanned: rows, midnight, clock, done: undefined, days: 0, unused };
  }
  const { weekdays, dates } = given.daysOff ?? noDaysOff;
  const midnight =
    start !== undefined
      ? Math.floor(start)
      : readyBy === undefined
        ? undefined
        : latestStart(
            readyBy,
            opens,
            (at) =>
              at === undefined
                ? bestOf(sets, colors, { ...dayFrom(61, opens), clock: clockFrom({ ...given, daysOff: undefined }, 61) }, given, undefined)
                    .scheduled.done
                : found(at, opens).scheduled.done,
            (at) => weekdays.has(at % 7) || dates.has(at),
          );
  const from = start === undefined ? opens : timeOfDay(start);
  const { scheduled, stocks } = found(midnight, from);
  if ((midnight ?? 0) + scheduled.done / day > lastDay) throw noAnswer`the plan runs past the year 9999: plan fewer pieces at a time`;
  const next = colors.map(() => 0);
  const loads = scheduled.loads.map((load, i): Planned => {
    const entry = stocks[load.color].entries[next[load.color]++];
    return { ...load, ...scheduled.times[i], ...entry, colorName: colors[load.color].name };
  });
  const begun = loads.reduce((least, load) => Math.min(least, load.from), Number.POSITIVE_INFINITY);
  return {
    tub,
    loads,
    pulls: new Set(loads.map(({ pull }) => pull)).size,
    colors: colors.map((color, i) => ({ ...color, ...stocks[i] })),
    unplanned: rows,
    midnight,
    clock: clockFrom(given, midnight),
    done: scheduled.done,
    days: dayOf(scheduled.done - 2 * slack) - dayOf(begun) + 1,
    unused,
  };
}
