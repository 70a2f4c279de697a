import type { Clock } from "./clock";
import type { Load } from "./loads";
import { type Habit, type Job, type Pace, schedule, type Times, type Vessels } from "./pulls";

/** What the schedule takes from the shop, whatever the order of the loads. */
export interface Day {
  readonly start: number;
  readonly clock: Clock;
  readonly pace: Pace;
  readonly wrap: number;
  readonly vessels: Vessels;
  readonly mostResin: number;
}

export interface Scheduled {
  readonly loads: readonly Load[];
  readonly times: readonly Times[];
  readonly done: number;
}

const firstRow = (load: Load): number => load.shares[0].part.row.index;

const jobOf = (load: Load, wrap: number): Job => ({ color: load.color, need: load.need, wrap: load.count * wrap, batches: load.batches });

/** Rules for timing the pulls: all are tried, for none is always best. */
export function habitsOf({ abreast }: Vessels, careful: boolean): Habit[] {
  const least = careful ? [...new Set([1, Math.ceil(abreast / 2), abreast])] : [abreast];
  return least.flatMap((many) => [
    { least: many, between: true },
    { least: many, between: false },
  ]);
}

/** The schedule of the loads in one order by one of these rules. */
export function run(loads: readonly Load[], habit: Habit, { start, clock, pace, wrap, vessels, mostResin }: Day): Scheduled {
  const times = schedule(
    loads.map((load) => jobOf(load, wrap)),
    start,
    clock,
    pace,
    vessels,
    mostResin,
    habit,
  );
  const index = loads.map((_, i) => i).sort((a, b) => times[a].pull - times[b].pull || a - b);
  return {
    loads: index.map((i) => loads[i]),
    times: index.map((i) => times[i]),
    done: times.reduce((last, { done }) => Math.max(last, done), start),
  };
}

export const asTyped = (loads: readonly Load[]): Load[] => [...loads].sort((a, b) => firstRow(a) - firstRow(b));

/** Orders to try: as typed, most resin first, longest work first, colors by turns. */
export function ordersOf(loads: readonly Load[], wrap: number): Load[][] {
  const typed = asTyped(loads);
  const work = ({ count, batches }: Load) => count * wrap + batches.reduce((sum, bake) => sum + bake, 0);
  const byNeed = [...typed].sort((a, b) => b.need - a.need);
  const byWork = [...typed].sort((a, b) => work(b) - work(a));
  const colors = new Map<number, Load[]>();
  for (const load of byNeed) {
    const own = colors.get(load.color);
    if (own) own.push(load);
    else colors.set(load.color, [load]);
  }
  const turns = [...colors.values()];
  const byTurns = Array.from({ length: Math.max(0, ...turns.map(({ length }) => length)) }, (_, i) =>
    turns.flatMap((own) => own[i] ?? []),
  ).flat();
  const byColor = turns.flat();
  return [byNeed, typed, byWork, [...byWork].reverse(), ...(colors.size > 1 ? [byTurns, byColor] : [])];
}

/** Most loads for which moves are tried. */
const fewLoads = 10;

/** Local search: moves one load at a time and keeps a move that `keeps` accepts; two passes at most. */
export function improved(found: Scheduled, day: Day, keeps: (tried: Scheduled) => boolean): void {
  let loads = [...found.loads];
  if (loads.length < 2 || loads.length > fewLoads) return;
  for (let round = 0; round < 2; round++) {
    let moved = false;
    for (let from = 0; from < loads.length; from++)
      for (let to = 0; to < loads.length; to++) {
        if (from === to) continue;
        const order = loads.filter((_, i) => i !== from);
        order.splice(to, 0, loads[from]);
        const better = habitsOf(day.vessels, false).some((habit) => keeps(run(order, habit, day)));
        if (!better) continue;
        loads = order;
        moved = true;
      }
    if (!moved) break;
  }
}
