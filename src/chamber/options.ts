import { allowance } from "./abreast";
import { byDepth, type Effort, packLayer } from "./mixed";
import type { Item, Pool } from "./rows";
import { countOf, heightIn, itemOf, type Room, type Shape, type Stratum, sizesOf, stratumOf, type Way } from "./stratum";

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
export function someOf(heights: readonly Height[], left: Int32Array, room: number, many: number): readonly Height[] {
  const open = heights.filter(({ height, sizes }) => height <= room * (1 + allowance) && sizes.some((size) => left[size] > 0));
  if (open.length <= many) return open;
  return Array.from({ length: many }, (_, i) => open[Math.round((i * (open.length - 1)) / (many - 1))]);
}

/** How many heights of layers are tried. */
export interface Care extends Effort {
  readonly heights: number;
}

export interface Option extends Stratum {
  readonly worth: number;
  readonly count: number;
  /** Pieces of each size. */
  readonly sizes: readonly (readonly [size: number, many: number])[];
}

/** Cache of layers packed from a pool: each is valid as long as the pool still has its pieces. */
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

/** A full layer in one way no higher than a limit; packed anew only where the pool no longer has the pieces of the cached one. */
export function optionFor(way: Way, limit: number, tall: boolean, room: Room, pool: Pool, care: Care, memory: Memory): Option | undefined {
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
