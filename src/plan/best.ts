import { day } from "./clock";
import type { PlanColor } from "./colors";
import type { Given } from "./given";
import type { Load } from "./loads";
import { asTyped, type Day, habitsOf, improved, ordersOf, run, type Scheduled } from "./order";
import type { LoadSet } from "./sets";
import { lastDayOf, type Stock, stockOf } from "./stock";

interface Found {
  readonly scheduled: Scheduled;
  readonly stocks: readonly Stock[];
  readonly packets: number;
  readonly left: number;
}

/** Above this number of loads a plan is made by one rule instead of the best of several. */
const careful = 40;

const better = (a: Found, b: Found | undefined): boolean => {
  if (!b) return true;
  if (Math.abs(a.scheduled.done - b.scheduled.done) > 1) return a.scheduled.done < b.scheduled.done;
  if (a.packets !== b.packets) return a.packets < b.packets;
  return a.left < b.left * (1 - 1e-9);
};

/** Every color's stock through the loads of a schedule. */
function stocksOf({ loads, times }: Scheduled, colors: readonly PlanColor[], given: Given, midnight: number | undefined): Stock[] {
  const moment = (seconds: number) => (midnight ?? 1) + seconds / day;
  const habits = {
    packetMakes: given.packetMakes,
    most: given.mostResin ?? Number.POSITIVE_INFINITY,
    lastDay: lastDayOf(given.catalyzedMonths, midnight !== undefined),
    dated: midnight !== undefined,
  };
  return colors.map(({ begin }, color) => {
    const draws = loads.flatMap((load, i) =>
      load.color === color ? [{ ...pick(load), from: moment(times[i].from), in: moment(times[i].in), out: moment(times[i].out) }] : [],
    );
    return stockOf(begin, draws, habits);
  });
}

const pick = ({ need, cover, uptake, drips }: Load) => ({ need, cover, uptake, drips });

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** The best schedule among several ways to part, order and time the loads, from a moment on. */
export function bestOf(
  sets: readonly LoadSet[],
  colors: readonly PlanColor[],
  day: Day,
  given: Given,
  midnight: number | undefined,
): Found {
  let best: Found | undefined;
  const look = (scheduled: Scheduled): boolean => {
    if (best && scheduled.done > best.scheduled.done + 1) return false;
    const stocks = stocksOf(scheduled, colors, given, midnight);
    const found = {
      scheduled,
      stocks,
      packets: sum(stocks.flatMap(({ entries }) => entries.map(({ packets }) => packets))),
      left: sum(stocks.map(({ left, discarded }) => left + discarded)),
    };
    if (!better(found, best)) return false;
    best = found;
    return true;
  };
  for (const loads of sets) {
    const isFew = loads.length <= careful;
    const orders = given.order === "as typed" ? [asTyped(loads)] : ordersOf(loads, day.wrap).slice(0, isFew ? undefined : 2);
    for (const order of orders) for (const habit of habitsOf(day.vessels, isFew)) look(run(order, habit, day));
  }
  if (given.order === "best") improved(best!.scheduled, day, look);
  return best!;
}
