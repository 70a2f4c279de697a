import { stretchOf } from "./abreast";
import type { Axis, Floor } from "./floor";
import { type Item, type Lead, type Pool, packRows, type Region, type Run } from "./rows";

/*
 * A layer of mixed sizes: rows across the floor, the first at one of several offsets, and, for long pieces, rows within a
 * zone and rows turned a quarter in what the zone leaves beside it. Several are tried; the one that holds most is kept.
 */

export interface Packed {
  readonly runs: readonly Run[];
  readonly worth: number;
}

/** Limits of the search. */
export interface Effort {
  readonly depths: number;
  readonly starts: number;
  readonly zones: number;
  /** Rows on the middle of a round floor, from which the others go outwards. */
  readonly middles: number;
  readonly leads: readonly Lead[];
}

export const thorough: Effort = { depths: 6, starts: 4, zones: 3, middles: 4, leads: ["densest", "deepest"] };
export const fair: Effort = { depths: 3, starts: 2, zones: 1, middles: 1, leads: ["densest", "deepest"] };
export const quick: Effort = { depths: 2, starts: 1, zones: 1, middles: 0, leads: ["densest"] };

const everywhere = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };

/** At most so many of them, the first and the last among these. */
function some<T>(all: readonly T[], many: number): readonly T[] {
  if (all.length <= many) return all;
  if (many < 1) return [];
  if (many === 1) return [all[0]];
  return Array.from({ length: many }, (_, i) => all[Math.round((i * (all.length - 1)) / (many - 1))]);
}

/** The distinct depths of items sorted from the deepest on. */
function distinctDepths(items: readonly Item[]): number[] {
  const once: number[] = [];
  for (const { p } of items) if (once[once.length - 1] !== p) once.push(p);
  return once;
}

const descending = (numbers: number[]): number[] => numbers.sort((a, b) => b - a).filter((one, i, all) => one !== all[i - 1]);

/** Offsets at which the first row of a round floor just reaches the wall with one piece, two pieces and so on. */
function startsOf(floor: Floor, axis: Axis, gap: number, side: number, within: number, many: number): number[] {
  const across = floor.across(axis);
  if (!floor.round) return [-across];
  const starts: number[] = [];
  for (let pieces = 1; starts.length < many; pieces++) {
    const half = stretchOf(pieces, side, gap) / 2;
    if (half >= across || half > within) break;
    starts.push(-Math.sqrt(across * across - half * half));
  }
  return starts.length ? starts : [-across];
}

/** The regions of one way to part the floor: rows alone, rows from the middle outwards, or a zone of rows with turned ones beside it. */
interface Parting {
  readonly first: Region;
  /** A second region beside is the first, mirrored. */
  readonly beside: readonly Region[];
}

function partingsOf(floor: Floor, gap: number, { p, q }: Item, depths: readonly number[], { starts, zones, middles }: Effort): Parting[] {
  const axes: readonly Axis[] = floor.round ? [0] : [0, 1];
  return axes.flatMap((axis) => {
    const to = floor.across(axis);
    const whole = [p, q]
      .slice(0, q > 1.5 * p ? 2 : 1)
      .flatMap((side) =>
        startsOf(floor, axis, gap, side, Number.POSITIVE_INFINITY, starts).map(
          (from): Parting => ({ first: { axis, from, to, ...everywhere }, beside: [] }),
        ),
      );
    if (floor.round)
      for (const depth of some(depths, middles)) {
        const outer: Region = { axis, from: depth / 2 + gap, to, ...everywhere };
        whole.push({ first: { axis, from: -depth / 2, to: depth / 2, ...everywhere }, beside: [outer, outer] });
      }
    if (q < 2 * p) return whole;
    const reach = floor.across((1 - axis) as Axis);
    const widest = Math.floor((2 * reach + gap) / (q + gap));
    const zoned = Array.from({ length: Math.min(zones, widest) }, (_, i) => stretchOf(widest - i, q, gap)).flatMap((zone) => {
      const turned: Axis = axis === 0 ? 1 : 0;
      if (!floor.round) {
        const edge = -reach + zone;
        const first: Region = { axis, from: -to, to, least: -reach, most: edge };
        return [{ first, beside: [{ axis: turned, from: edge + gap, to: reach, ...everywhere }] }];
      }
      const outer: Region = { axis: turned, from: zone / 2 + gap, to: reach, ...everywhere };
      return startsOf(floor, axis, gap, q, zone / 2, starts).map(
        (from): Parting => ({ first: { axis, from, to, least: -zone / 2, most: zone / 2 }, beside: [outer, outer] }),
      );
    });
    return [...whole, ...zoned];
  });
}

const mirrored = (axis: Axis, run: Run): Run => (axis === 0 ? { ...run, y: -run.y - run.dy } : { ...run, x: -run.x - run.dx });

/** The deeper first: rows are filled in this order. */
export const byDepth = (a: Item, b: Item): number => b.p - a.p || b.q - a.q;

/** The layer of these items, the deepest first, that holds most; nothing is taken out of the pool. */
export function packLayer(floor: Floor, gap: number, items: readonly Item[], pool: Pool, effort: Effort): Packed {
  const here = items.filter(({ size }) => pool.left[size] > 0);
  if (!here.length) return { runs: [], worth: 0 };
  const flat = some(distinctDepths(here), effort.depths);
  let [shortest, longest] = [Number.POSITIVE_INFINITY, 0];
  for (const { q } of here) {
    if (q < shortest) shortest = q;
    if (q > longest) longest = q;
  }
  const depths = descending(effort.depths > 2 ? [longest, shortest, ...flat] : [longest, ...flat]);
  const { count, worth } = pool;
  // No layer can hold more than everything that is left.
  const most =
    Math.min(
      worth,
      here.reduce((sum, item) => sum + item.worth * pool.left[item.size], 0),
    ) *
    (1 - 1e-9);
  let best: Packed = { runs: [], worth: 0 };
  for (const { first, beside } of partingsOf(floor, gap, here[0], depths, effort))
    for (const lead of effort.leads) {
      const runs: Run[] = [];
      const own = lead === "deepest" || beside.length ? flat : depths;
      let held = packRows(floor, gap, here, own, pool, first, lead, runs);
      for (let i = 0; i < beside.length; i++) {
        const from = runs.length;
        held += packRows(floor, gap, here, flat, pool, beside[i], lead, runs);
        if (i === 1) for (let at = from; at < runs.length; at++) runs[at] = mirrored(beside[i].axis, runs[at]);
      }
      for (const run of runs) pool.left[run.size] += run.columns * run.rows;
      pool.count = count;
      pool.worth = worth;
      if (held > best.worth * (1 + 1e-9)) best = { runs, worth: held };
      if (best.worth >= most) return best;
    }
  return best;
}
