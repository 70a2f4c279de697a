import { needOf, toCover } from "../chamber/need";
import type { Run } from "../chamber/rows";
import type { Stack } from "../chamber/stack";
import type { Shape } from "../chamber/stratum";
import { batchesOf } from "./oven";
import type { Part } from "./parts";
import type { Tub } from "./tub";

/** A number of pieces of one row. */
export interface Share {
  readonly part: Part;
  readonly count: number;
}

/** One filling of one tub. */
export interface Load {
  /** Index of its color. */
  readonly color: number;
  readonly stack: Stack;
  readonly shares: readonly Share[];
  readonly count: number;
  readonly solids: number;
  readonly ballast: number;
  readonly uptake: number;
  /** Resin that clings to the pieces and is lost, m³; no more than there is. */
  readonly drips: number;
  readonly faces: number;
  /** The least resin that it needs, and the resin that covers it fully under vacuum, m³. */
  readonly need: number;
  readonly cover: number;
  /** Seconds that each batch bakes. */
  readonly batches: readonly number[];
}

export interface Filled {
  readonly cover: number;
  readonly leastCover: number;
  readonly drips: number;
  readonly ovenShelves: number;
}

/** Deals the pieces of each size to the loads of one color, as their rows come. */
function dealer(parts: readonly Part[], shapes: readonly Shape[]) {
  const queues: Part[][] = shapes.map(() => []);
  for (const part of parts) queues[part.size].push(part);
  const at = shapes.map(() => 0);
  const used = shapes.map(() => 0);
  return (size: number, many: number, give: (part: Part, count: number) => void): void => {
    for (let missing = many; missing > 0; ) {
      const part = queues[size][at[size]];
      const count = Math.min(missing, part.row.count - used[size]);
      give(part, count);
      missing -= count;
      used[size] += count;
      if (used[size] === part.row.count) {
        at[size]++;
        used[size] = 0;
      }
    }
  };
}

function sizesIn({ strata }: Stack): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { runs } of strata)
    for (const { size, columns, rows } of runs as readonly Run[]) counts.set(size, (counts.get(size) ?? 0) + columns * rows);
  return counts;
}

/** The stacks of one color as loads, with the pieces in each. */
export function loadsOf(
  stacks: readonly Stack[],
  parts: readonly Part[],
  shapes: readonly Shape[],
  color: number,
  tub: Tub,
  shop: Filled,
): Load[] {
  const deal = dealer(parts, shapes);
  return stacks.map((stack): Load => {
    const shares = new Map<Part, number>();
    for (const [size, many] of sizesIn(stack)) deal(size, many, (part, count) => shares.set(part, (shares.get(part) ?? 0) + count));
    const sorted = [...shares].map(([part, count]): Share => ({ part, count })).sort((a, b) => a.part.row.index - b.part.row.index);
    const sum = (of: (part: Part) => number) => sorted.reduce((all, { part, count }) => all + of(part) * count, 0);
    const wet = { area: tub.area, stack: stack.height, solids: sum(({ solids }) => solids), uptake: sum(({ uptake }) => uptake) };
    const faces = sum((part) => part.faces);
    return {
      color,
      stack,
      shares: sorted,
      count: stack.count,
      solids: wet.solids,
      uptake: wet.uptake,
      ballast: sum(({ ballast }) => ballast),
      faces,
      drips: faces * shop.drips,
      need: needOf(wet, shop.leastCover),
      cover: toCover(wet, shop.cover),
      batches: batchesOf(
        sorted.map(({ part: { bake, perShelf }, count }) => ({ bake, perShelf, count })),
        shop.ovenShelves,
      ),
    };
  });
}
