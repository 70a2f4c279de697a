import { allowance } from "./abreast";
import type { Floor } from "./floor";
import { byDepth, type Effort, packLayer } from "./mixed";
import type { Item, Pool, Run } from "./rows";

export type Way = "upright" | "lying";

/** The sides of a piece, a not above b; the grain runs along the length. */
export interface Shape {
  readonly a: number;
  readonly b: number;
  readonly length: number;
  readonly volume: number;
}

/** One layer of a load: one way, any sizes. */
export interface Stratum {
  readonly way: Way;
  /** Its tallest piece. */
  readonly height: number;
  readonly runs: readonly Run[];
  /** Its pieces differ in height by more than the gap: what comes above rests on a plate. */
  readonly uneven: boolean;
}

export interface Stack {
  readonly strata: readonly Stratum[];
  readonly height: number;
  readonly count: number;
  readonly worth: number;
}

/** What a stack may reach. */
export interface Room {
  readonly floor: Floor;
  readonly gap: number;
  /** Height for pieces: cover and foam stand above it. */
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** Whether a stack so high that pushes so much aside may be covered; undefined where nothing limits that. */
  readonly affords?: (height: number, runs: readonly Run[]) => boolean;
}

const none: Stack = { strata: [], height: 0, count: 0, worth: 0 };

/** The height of a piece in a layer: standing, or on the side that takes less of the floor if the layer is high enough for it. */
function heightIn(way: Way, { a, b, length }: Shape, limit: number): number {
  if (way === "upright") return length;
  return b <= limit * (1 + allowance) ? b : a;
}

function itemOf(way: Way, shape: Shape, size: number, limit: number): Item | undefined {
  const height = heightIn(way, shape, limit);
  if (height > limit * (1 + allowance)) return undefined;
  const { a, b, length, volume } = shape;
  if (way === "upright") return { size, p: a, q: b, worth: volume };
  const beside = height === b ? a : b;
  return { size, p: Math.min(beside, length), q: Math.max(beside, length), worth: volume };
}

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

/** A height that a layer may have: that of some sizes, in one way. */
interface Height {
  readonly way: Way;
  readonly height: number;
  readonly sizes: readonly number[];
}

/** All heights of one way, the greatest first. */
function heightsOf(way: Way, shapes: readonly Shape[]): Height[] {
  const sizes = new Map<number, number[]>();
  shapes.forEach(({ a, b, length }, size) => {
    for (const side of way === "upright" ? [length] : [a, b]) {
      const own = sizes.get(side);
      if (own) own.push(size);
      else sizes.set(side, [size]);
    }
  });
  return [...sizes].map(([height, own]) => ({ way, height, sizes: own })).sort((a, b) => b.height - a.height);
}

/** At most so many of the heights that are open and go into the room, evenly picked, the least and the most among them. */
function someOf(heights: readonly Height[], left: Int32Array, room: number, many: number): readonly Height[] {
  const open = heights.filter(({ height, sizes }) => height <= room * (1 + allowance) && sizes.some((size) => left[size] > 0));
  if (open.length <= many) return open;
  return Array.from({ length: many }, (_, i) => open[Math.round((i * (open.length - 1)) / (many - 1))]);
}

function stratumOf(way: Way, limit: number, runs: readonly Run[], { shapes, gap }: Room): Stratum {
  let most = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const { size } of runs) {
    const height = heightIn(way, shapes[size], limit);
    most = Math.max(most, height);
    least = Math.min(least, height);
  }
  return { way, height: most, runs, uneven: most - least > gap * (1 + allowance) };
}

const plates = (uneven: number, gap: number): number => Math.max(0, uneven - 1) * gap;

/** Level layers below uneven ones, the fuller below the emptier. */
const settled = (strata: readonly (Stratum & { readonly floor: number })[]): Stratum[] =>
  [...strata]
    .sort((one, other) => Number(one.uneven) - Number(other.uneven) || other.floor - one.floor)
    .map(({ way, height, runs, uneven }) => ({ way, height, runs, uneven }));

const floorUsed = (runs: readonly Run[]): number => runs.reduce((sum, { dx, dy, columns, rows }) => sum + dx * dy * columns * rows, 0);

/** How many heights of layers are looked at. */
export interface Care extends Effort {
  readonly heights: number;
}

interface Option extends Stratum {
  readonly worth: number;
  readonly count: number;
  /** Pieces of each size. */
  readonly sizes: readonly (readonly [size: number, many: number])[];
}

/** Layers as they were packed for the pool that is being emptied: good as long as it still has what they hold. */
export interface Memory {
  readonly heights: Readonly<Record<Way, readonly Height[]>>;
  /** By what they are asked for, tall pieces only or all, and the limit. */
  readonly items: Named<readonly Item[]>;
  readonly options: Named<Option>;
}

type Named<T> = Readonly<Record<"upright" | "uprightTall" | "lying" | "lyingTall", Map<number, T>>>;

const empties = <T>(): Named<T> => ({ upright: new Map(), uprightTall: new Map(), lying: new Map(), lyingTall: new Map() });

export const newMemory = (shapes: readonly Shape[]): Memory => ({
  heights: { upright: heightsOf("upright", shapes), lying: heightsOf("lying", shapes) },
  items: empties(),
  options: empties(),
});

/** The same for a pool that is full again. */
export const forgotten = (memory: Memory): Memory => ({ ...memory, options: empties() });

const nameOf = { upright: ["upright", "uprightTall"], lying: ["lying", "lyingTall"] } as const;

function itemsFor(way: Way, limit: number, tall: boolean, { shapes }: Room, { items }: Memory): readonly Item[] {
  const own = items[nameOf[way][Number(tall)]];
  const known = own.get(limit);
  if (known) return known;
  const made = shapes.flatMap((shape, size) => {
    const item = itemOf(way, shape, size, limit);
    return item && (!tall || heightIn(way, shape, limit) >= 0.75 * limit) ? item : [];
  });
  made.sort(byDepth);
  own.set(limit, made);
  return made;
}

function sizesOf(runs: readonly Run[]): [size: number, many: number][] {
  const counts = new Map<number, number>();
  for (const { size, columns, rows } of runs) counts.set(size, (counts.get(size) ?? 0) + columns * rows);
  return [...counts];
}

/** A full layer of one way no higher than a limit, packed afresh only where the pool has no longer what the last one held. */
function optionFor(way: Way, limit: number, tall: boolean, room: Room, pool: Pool, care: Care, memory: Memory): Option | undefined {
  const own = memory.options[nameOf[way][Number(tall)]];
  const known = own.get(limit);
  if (
    known &&
    known.count <= pool.count &&
    known.worth <= pool.worth * (1 + allowance) &&
    known.sizes.every(([size, many]) => pool.left[size] >= many)
  )
    return known;
  const { runs, worth } = packLayer(room.floor, room.gap, itemsFor(way, limit, tall, room, memory), pool, care);
  if (!runs.length) return undefined;
  const made = { ...stratumOf(way, limit, runs, room), worth, count: countOf(runs), sizes: sizesOf(runs) };
  own.set(limit, made);
  return made;
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

const countOf = (runs: readonly Run[]): number => {
  let count = 0;
  for (const { columns, rows } of runs) count += columns * rows;
  return count;
};

/** Puts a stack back into the pool. */
export function unstack({ strata }: Stack, pool: Pool): void {
  for (const { runs } of strata) for (const { size, columns, rows } of runs) pool.left[size] += columns * rows;
}
