import { allowance } from "./abreast";
import type { Floor } from "./floor";
import type { Item, Run } from "./rows";

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

/** Limits of a stack. */
export interface Room {
  readonly floor: Floor;
  readonly gap: number;
  /** Height for pieces: cover and foam stand above it. */
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** Whether a stack so high that pushes so much aside may be covered; undefined where nothing limits that. */
  readonly affords?: (height: number, runs: readonly Run[]) => boolean;
}

/** The height of a piece in a layer: standing, or on the side that takes less of the floor if the layer is high enough for it. */
export function heightIn(way: Way, { a, b, length }: Shape, limit: number): number {
  if (way === "upright") return length;
  return b <= limit * (1 + allowance) ? b : a;
}

export function itemOf(way: Way, shape: Shape, size: number, limit: number): Item | undefined {
  const height = heightIn(way, shape, limit);
  if (height > limit * (1 + allowance)) return undefined;
  const { a, b, length, volume } = shape;
  if (way === "upright") return { size, p: a, q: b, worth: volume };
  const beside = height === b ? a : b;
  return { size, p: Math.min(beside, length), q: Math.max(beside, length), worth: volume };
}

export function stratumOf(way: Way, limit: number, runs: readonly Run[], { shapes, gap }: Room): Stratum {
  let most = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const { size } of runs) {
    const height = heightIn(way, shapes[size], limit);
    most = Math.max(most, height);
    least = Math.min(least, height);
  }
  return { way, height: most, runs, uneven: most - least > gap * (1 + allowance) };
}

export const plates = (uneven: number, gap: number): number => Math.max(0, uneven - 1) * gap;

/** Level layers below uneven ones, the fuller below the emptier. */
export const settled = (strata: readonly (Stratum & { readonly floor: number })[]): Stratum[] =>
  [...strata]
    .sort((one, other) => Number(one.uneven) - Number(other.uneven) || other.floor - one.floor)
    .map(({ way, height, runs, uneven }) => ({ way, height, runs, uneven }));

export const floorUsed = (runs: readonly Run[]): number =>
  runs.reduce((sum, { dx, dy, columns, rows }) => sum + dx * dy * columns * rows, 0);

export function sizesOf(runs: readonly Run[]): [size: number, many: number][] {
  const counts = new Map<number, number>();
  for (const { size, columns, rows } of runs) counts.set(size, (counts.get(size) ?? 0) + columns * rows);
  return [...counts];
}

export const countOf = (runs: readonly Run[]): number => {
  let count = 0;
  for (const { columns, rows } of runs) count += columns * rows;
  return count;
};
