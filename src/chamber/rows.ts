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

const one = 1 + allowance;

/** The result of the last row: how much it holds, its depth, and the length of its pieces. The next row overwrites it. */
const row = { worth: 0, depth: 0, used: 0 };

/**
 * One row as deep as asked, the deepest pieces first, a quarter turned where that is no deeper; `put` is told of them. It
 * is looked at far more often than kept, so it leaves nothing behind but three numbers.
 */
function lay(
  items: readonly Item[],
  { left, count, worth }: Pool,
  depth: number,
  length: number,
  gap: number,
  shortest: number,
  put?: (item: Item, many: number, along: number, across: number) => void,
): void {
  const most = depth * one;
  const least = (shortest + gap) / one;
  let room = length + gap;
  let pieces = count;
  let volume = worth * one;
  let deepest = 0;
  let total = 0;
  for (let i = 0; i < items.length; i++) {
    if (room < least || pieces < 1) break;
    const item = items[i];
    const there = left[item.size];
    if (there === 0 || item.p > most) continue;
    const turned = item.q <= most;
    const along = turned ? item.p : item.q;
    let many = Math.floor((room / (along + gap)) * one);
    if (many > there) many = there;
    if (many > pieces) many = pieces;
    if (many * item.worth > volume) many = Math.floor(volume / item.worth);
    if (many < 1) continue;
    const across = turned ? item.q : item.p;
    if (put) put(item, many, along, across);
    total += many * item.worth;
    if (across > deepest) deepest = across;
    room -= many * (along + gap);
    pieces -= many;
    volume -= many * item.worth;
  }
  row.worth = total;
  row.depth = deepest;
  row.used = length - room;
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
  let shortest = Number.POSITIVE_INFINITY;
  for (const { p, size } of items) if (p < shortest && pool.left[size] > 0) shortest = p;
  const thinnest = depths[depths.length - 1];
  let total = 0;
  let u = region.from;
  let from = runs.length;
  while (u + thinnest <= to * one && pool.count > 0) {
    let score = 0;
    let deep = 0;
    let length = 0;
    let at = 0;
    for (const depth of depths) {
      if (u + depth > to * one) continue;
      const half = floor.half(axis, Math.max(-u, u + depth));
      const lo = Math.max(least, -half);
      const hi = Math.min(most, half);
      if (half < 0 || hi - lo < shortest / one) continue;
      lay(items, pool, depth, hi - lo, gap, shortest);
      if (row.worth === 0 || row.worth / (row.depth + gap) <= score * one) continue;
      score = row.worth / (row.depth + gap);
      deep = depth;
      length = hi - lo;
      at = (lo + hi - row.used) / 2;
      if (lead === "deepest") break;
    }
    if (score === 0) {
      // Below the middle of a round floor rows grow longer upwards.
      if (u >= 0 || !floor.round) break;
      u = Math.max(u + thinnest / 4, -floor.reach(shortest / 2));
      continue;
    }
    lay(items, pool, deep, length, gap, shortest, (item, many, along, across) => {
      runs.push(runOf(axis, item.size, at, u, along, across, many));
      at += many * (along + gap);
      pool.left[item.size] -= many;
    });
    for (let i = from; i < runs.length; i++) {
      const many = runs[i].columns * runs[i].rows;
      pool.count -= many;
    }
    from = runs.length;
    pool.worth -= row.worth;
    total += row.worth;
    u += row.depth + gap;
  }
  return total;
}
