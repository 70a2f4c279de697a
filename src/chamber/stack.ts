import { allowance } from "./abreast";
import { type Care, type Memory, type Option, optionFor, someOf } from "./options";
import type { Pool, Run } from "./rows";
import { floorUsed, plates, type Room, type Stratum, settled, type Way } from "./stratum";

export interface Stack {
  readonly strata: readonly Stratum[];
  readonly height: number;
  readonly count: number;
  readonly worth: number;
}

const none: Stack = { strata: [], height: 0, count: 0, worth: 0 };

const grid = 128;

/** Index of the layer to begin with, if layers such as these may be repeated: the first of those that together hold most. */
function firstOf(options: readonly { height: number; worth: number }[], height: number): number {
  const most = new Float64Array(grid + 1);
  const steps = options.map((option) => Math.max(1, Math.ceil((option.height / height) * grid * (1 - allowance))));
  for (let at = 1; at <= grid; at++) {
    most[at] = most[at - 1];
    for (let i = 0; i < steps.length; i++)
      if (steps[i] <= at && most[at - steps[i]] + options[i].worth > most[at]) most[at] = most[at - steps[i]] + options[i].worth;
  }
  let best = 0;
  let value = -1;
  options.forEach(({ worth }, i) => {
    const all = steps[i] <= grid ? worth + most[grid - steps[i]] : 0;
    if (all > value * (1 + allowance)) [best, value] = [i, all];
  });
  return best;
}

/** Fills one tub from the pool, layer upon layer, each the one that promises most for the height that is left. */
export function stackUp(ways: readonly Way[], room: Room, pool: Pool, care: Care, memory: Memory): Stack {
  const { gap } = room;
  const strata: (Stratum & { floor: number })[] = [];
  const taken: Run[] = [];
  let height = 0;
  let uneven = 0;
  let count = 0;
  let worth = 0;
  while (pool.count > 0) {
    const left = room.height - height - plates(uneven, gap);
    const options: Option[] = [];
    const heights = ways.flatMap((way) => someOf(memory.heights[way], pool.left, left, care.heights));
    for (const { way, height: limit } of heights)
      for (const tall of care.heights > 4 ? [true, false] : [true]) {
        const option = optionFor(way, limit, tall, room, pool, care, memory);
        if (!option || (options.length && options[options.length - 1] === option)) continue;
        const above = height + option.height + plates(uneven + Number(option.uneven), gap);
        if (above > room.height * (1 + allowance)) continue;
        if (room.affords && !room.affords(above, [...taken, ...option.runs])) continue;
        options.push(option);
      }
    if (!options.length) break;
    const all = options.filter((option) => option.worth >= pool.worth * (1 - allowance) || option.count >= pool.count);
    const next = all.length ? all.reduce((a, b) => (b.height < a.height ? b : a)) : options[firstOf(options, left)];
    const { way, runs } = next;
    strata.push({ way, height: next.height, runs, uneven: next.uneven, floor: floorUsed(runs) });
    taken.push(...runs);
    height += next.height;
    uneven += Number(next.uneven);
    worth += next.worth;
    count += next.count;
    for (const [size, many] of next.sizes) pool.left[size] -= many;
    pool.count -= next.count;
    pool.worth -= next.worth;
  }
  if (!strata.length) return none;
  return { strata: settled(strata), height: height + plates(uneven, gap), count, worth };
}

/** Puts a stack back into the pool. */
export function unstack({ strata }: Stack, pool: Pool): void {
  for (const { runs } of strata) for (const { size, columns, rows } of runs) pool.left[size] += columns * rows;
}
