import { allowance } from "./abreast";
import type { Axis, Floor } from "./floor";

/** Pieces of one size as they lie in a layer: the sides of the footprint, p the shorter. */
export interface Item {
  readonly size: number;
  readonly p: number;
  readonly q: number;
  /** What one of them is worth to whoever packs: its volume. */
  readonly worth: number;
}

/** Equal pieces side by side, seen from above, from the middle of the tub: the lower left corner of the first of them. */
export interface Run {
  readonly size: number;
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly columns: number;
  readonly rows: number;
}

/** What may still be packed: pieces left of each size, and how many and how much in all. */
export interface Pool {
  readonly left: Int32Array;
  count: number;
  worth: number;
}

/** Where rows may lie: across them from one offset to another, along them within two limits. */
export interface Region {
  readonly axis: Axis;
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
}

interface Row {
  worth: number;
  depth: number;
  used: number;
  readonly picks: { item: Item; many: number; along: number; across: number }[];
}

const one = 1 + allowance;

/** One row as deep as asked, the deepest pieces first, a quarter turned where that is no deeper. */
function rowOf(items: readonly Item[], { left, count, worth }: Pool, depth: number, length: number, gap: number, shortest: number): Row {
  const row: Row = { worth: 0, depth: 0, used: 0, picks: [] };
  let room = length + gap;
  let pieces = count;
  let volume = worth;
  for (const item of items) {
    if (room < (shortest + gap) / one || pieces < 1) break;
    if (item.p > depth * one || !left[item.size]) continue;
    const turned = item.q <= depth * one;
    const along = turned ? item.p : item.q;
    const many = Math.min(left[item.size], Math.floor((room / (along + gap)) * one), pieces, Math.floor((volume / item.worth) * one));
    if (many < 1) continue;
    const across = turned ? item.q : item.p;
    row.picks.push({ item, many, along, across });
    row.worth += many * item.worth;
    row.depth = Math.max(row.depth, across);
    room -= many * (along + gap);
    pieces -= many;
    volume -= many * item.worth;
  }
  row.used = length - room;
  return row;
}

/** How the depth of the next row is chosen: the deepest that there is, or the one that holds most for its depth. */
export type Lead = "deepest" | "densest";

const runOf = (axis: Axis, size: number, at: number, u: number, along: number, across: number, many: number): Run =>
  axis === 0
    ? { size, x: at, y: u, dx: along, dy: across, columns: many, rows: 1 }
    : { size, x: u, y: at, dx: across, dy: along, columns: 1, rows: many };

/** Rows one over the other through a region; what they hold is taken out of the pool. */
export function packRows(
  floor: Floor,
  gap: number,
  items: readonly Item[],
  depths: readonly number[],
  pool: Pool,
  region: Region,
  lead: Lead,
  runs: Run[],
): number {
  const { axis, to, least, most } = region;
  const shortest = items.reduce((min, { p }) => Math.min(min, p), Number.POSITIVE_INFINITY);
  const thinnest = depths[depths.length - 1];
  let total = 0;
  let u = region.from;
  while (u + thinnest <= to * one && pool.count > 0) {
    let best: Row | undefined;
    let at = 0;
    for (const depth of depths) {
      if (u + depth > to * one) continue;
      const half = floor.half(axis, Math.max(-u, u + depth));
      const lo = Math.max(least, -half);
      const hi = Math.min(most, half);
      if (half < 0 || hi - lo < shortest / one) continue;
      const row = rowOf(items, pool, depth, hi - lo, gap, shortest);
      if (row.worth === 0) continue;
      if (best && row.worth / (row.depth + gap) <= (best.worth / (best.depth + gap)) * one) continue;
      best = row;
      at = (lo + hi - row.used) / 2;
      if (lead === "deepest") break;
    }
    if (!best) {
      // Below the middle of a round floor rows grow longer upwards.
      if (u >= 0) break;
      u += thinnest / 4;
      continue;
    }
    for (const { item, many, along, across } of best.picks) {
      runs.push(runOf(axis, item.size, at, u, along, across, many));
      at += many * (along + gap);
      pool.left[item.size] -= many;
      pool.count -= many;
      pool.worth -= many * item.worth;
    }
    total += best.worth;
    u += best.depth + gap;
  }
  return total;
}

/** Puts back into the pool what runs took. */
export function putBack(runs: readonly Run[], items: ReadonlyMap<number, Item>, pool: Pool): void {
  for (const { size, columns, rows } of runs) {
    const many = columns * rows;
    pool.left[size] += many;
    pool.count += many;
    pool.worth += many * items.get(size)!.worth;
  }
}
