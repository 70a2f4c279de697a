import { badInput } from "../../shared/outcome";
import type { placesOf as blocksToPlaces } from "../chamber/blocks";
import { floorOf } from "../chamber/floor";
import { waysOf } from "../chamber/layers";
import { type Bath, heightForPieces } from "../chamber/load";
import { fair, quick } from "../chamber/mixed";
import { needOf } from "../chamber/need";
import type { Pool, Run } from "../chamber/rows";
import { type Care, forgotten, newMemory, type Room, type Shape, type Stack, stackUp, unstack, type Way } from "../chamber/stack";
import type { Part } from "./parts";
import type { Tub } from "./tub";

const both: readonly Way[] = ["upright", "lying"];
export const waysTried: readonly (readonly Way[])[] = [both, ["lying"], ["upright"]];

/** What packing one color is about. */
export interface Packing {
  readonly shapes: readonly Shape[];
  readonly parts: readonly Part[];
  readonly tub: Tub;
  readonly bath: Bath;
  /** Most pieces that one person wraps in a day. */
  readonly mostPieces: number;
  /** Most resin that one load may need. */
  readonly mostResin: number;
}

export interface Stacks {
  readonly stacks: readonly Stack[];
  /** Pieces of each size that went into no load under the limit. */
  readonly stuck: Int32Array | undefined;
}

/** More would be neither read nor wanted, and would only keep the spreadsheet waiting. */
const mostLoads = 1e5;
const tooMany = (loads: number) => badInput`${loads} loads are more than a plan can hold, ${mostLoads}: plan fewer pieces at a time`;

const empty: Stack = { strata: [], height: 0, count: 0, worth: 0 };

/** Up to how many pieces a list is packed with all care. */
const few = 400;

/** The least that a piece of each size pushes aside, resin taken up and all. */
function leastNet(shapes: readonly Shape[], parts: readonly Part[]): Float64Array {
  const net = new Float64Array(shapes.length).fill(Number.POSITIVE_INFINITY);
  for (const { size, solids, uptake } of parts) net[size] = Math.min(net[size], solids - uptake);
  return net;
}

function roomOf({ shapes, parts, tub, bath, mostResin }: Packing): Room {
  const room = { floor: floorOf(tub.section, bath.gap), gap: bath.gap, height: heightForPieces(tub.height, bath), shapes };
  if (mostResin === Number.POSITIVE_INFINITY) return room;
  const net = leastNet(shapes, parts);
  return {
    ...room,
    affords: (stack, runs) => {
      const aside = runs.reduce((sum, { size, columns, rows }) => sum + columns * rows * net[size], 0);
      return needOf({ area: tub.area, stack, solids: aside, uptake: 0 }, bath.leastCover) <= mostResin * (1 + 1e-9);
    },
  };
}

/** Fills tubs with the pieces of one color. */
export function packer(packing: Packing) {
  const { shapes, parts, tub, bath } = packing;
  const room = roomOf(packing);
  const pieces = parts.reduce((sum, { row }) => sum + row.count, 0);
  const isFew = pieces <= few;
  const care: Care = isFew ? { ...fair, heights: 6 } : { ...quick, heights: 4 };
  let memory = newMemory(shapes);
  const forget = () => {
    memory = forgotten(memory);
  };
  const counts = new Int32Array(shapes.length);
  for (const { size, row } of parts) counts[size] += row.count;
  const volumeOf = (left: Int32Array) => left.reduce((sum, many, size) => sum + many * shapes[size].volume, 0);

  const waysKnown = new Map<number, ReturnType<typeof waysOf>>();
  const waysFor = (size: number) => {
    const known = waysKnown.get(size);
    if (known) return known;
    const { a, b, length } = shapes[size];
    const made = waysOf(tub.section, bath.gap, { thickness: a, width: b, length }).filter(
      ({ layer, height }) => layer.pieces > 0 && height <= room.height * (1 + 1e-9),
    );
    waysKnown.set(size, made);
    return made;
  };
  const layersIn = (height: number) => Math.floor((room.height / height) * (1 + 1e-9));

  /** What one tub holds of a size by itself: as PERLOAD says. */
  const perLoad = (size: number): number => Math.max(0, ...waysFor(size).map(({ layer, height }) => layersIn(height) * layer.pieces));

  const alike = new Map<string, Stack>();
  /** So many pieces of one size, the way that stacks lowest. */
  const ofOne = (size: number, many: number): Stack => {
    const key = `${size},${many}`;
    const known = alike.get(key);
    if (known) return known;
    const ways = waysFor(size).filter(({ layer, height }) => layersIn(height) * layer.pieces >= many);
    const stackOf = ({ layer, height }: (typeof ways)[number]) => Math.ceil(many / layer.pieces) * height;
    const way = ways.reduce((a, b) => (stackOf(b) < stackOf(a) - 1e-9 * tub.height ? b : a));
    const strata = Array.from({ length: Math.ceil(many / way.layer.pieces) }, (_, i) => {
      const here = Math.min(way.layer.pieces, many - i * way.layer.pieces);
      return { way: way.way, height: way.height, uneven: false, runs: firstRuns(way.layer, here, size) };
    });
    const made = { strata, height: stackOf(way), count: many, worth: many * shapes[size].volume };
    if (alike.size > 2000) alike.clear();
    alike.set(key, made);
    return made;
  };

  const onlySize = (stack: Stack): number | undefined => {
    const size = stack.strata[0]?.runs[0]?.size;
    return size !== undefined && stack.strata.every(({ runs }) => runs.every((run) => run.size === size)) ? size : undefined;
  };

  const take = (stack: Stack, pool: Pool) => {
    for (const { runs } of stack.strata) for (const { size, columns, rows } of runs) pool.left[size] -= columns * rows;
  };

  const put = (stack: Stack, left: Int32Array) => {
    for (const { runs } of stack.strata) for (const { size, columns, rows } of runs) left[size] += columns * rows;
  };

  const sizes = counts.reduce((many, count) => many + Number(count > 0), 0);

  /** The best filling of one tub from what is left, at most so many pieces and so much of them. */
  function fill(left: Int32Array, count: number, worth: number, tried = waysTried): Stack {
    const pool: Pool = { left, count: Math.min(count, packing.mostPieces), worth };
    if (sizes === 1 && !room.affords) {
      const size = parts[0].size;
      const many = Math.min(left[size], perLoad(size), pool.count, Math.floor((worth / shapes[size].volume) * (1 + 1e-9)));
      const alone = many > 0 ? ofOne(size, many) : empty;
      take(alone, pool);
      return alone;
    }
    let best = empty;
    for (const ways of tried) {
      const [most, much] = [pool.count, pool.worth];
      let stack = stackUp(ways, room, pool, care, memory);
      unstack(stack, pool);
      pool.count = most;
      pool.worth = much;
      const size = onlySize(stack);
      if (size !== undefined) {
        const many = Math.min(left[size], perLoad(size), most, Math.floor((much / shapes[size].volume) * (1 + 1e-9)));
        const alone = many >= stack.count || many >= perLoad(size) ? ofOne(size, Math.max(1, many)) : stack;
        if (
          !room.affords ||
          room.affords(
            alone.height,
            alone.strata.flatMap(({ runs }) => runs),
          )
        )
          stack = alone;
      }
      const more = stack.worth - best.worth;
      if (more > 1e-9 * best.worth || (more > -1e-9 * best.worth && stack.height < best.height - 1e-9)) best = stack;
    }
    take(best, pool);
    return best;
  }

  /** As few loads as the packing finds; or `loads` of them, evenly filled, each with some more than its share. */
  function build(loads?: number, more = 1, tried = isFew ? waysTried : [both], from: Int32Array = counts): Stacks {
    const left = from.slice();
    let count = left.reduce((sum, many) => sum + many, 0);
    let worth = volumeOf(left);
    const largest = shapes.reduce((most, { volume }, size) => (left[size] ? Math.max(most, volume) : most), 0);
    const stacks: Stack[] = [];
    forget();
    while (count > 0) {
      if (stacks.length > mostLoads) throw tooMany(Math.ceil((pieces / (pieces - count)) * stacks.length));
      const open = loads === undefined ? 1 : loads - stacks.length;
      if (open < 1) return { stacks, stuck: left };
      const share = open > 1 ? (worth / open) * more + largest * 0.999999 : worth * (1 + 1e-9);
      const many = open > 1 ? Math.ceil((count / open) * more * 1.5) : count;
      let stack = fill(left, many, share, tried);
      if (stack.count === 0) return { stacks, stuck: left };
      if (count - stack.count === 1 && stack.count > 2) {
        // One piece less here, so that the last of all rides with another.
        put(stack, left);
        stack = fill(left, stack.count - 1, share, tried);
      }
      stacks.push(stack);
      count -= stack.count;
      worth -= stack.worth;
    }
    return { stacks, stuck: undefined };
  }

  /** Rows in turn: each load takes the next pieces as they were typed, as many as go in. */
  function inTurn(): Stacks {
    const stacks: Stack[] = [];
    let [row, used, guess] = [0, 0, 8];
    /** The next so many pieces. */
    const next = (many: number): Int32Array => {
      const left = new Int32Array(shapes.length);
      for (let [i, skip, missing] = [row, used, many]; missing > 0 && i < parts.length; i++, skip = 0) {
        const here = Math.min(missing, parts[i].row.count - skip);
        left[parts[i].size] += here;
        missing -= here;
      }
      return left;
    };
    let rest = pieces;
    while (rest > 0) {
      let [good, bad, best] = [0, Math.min(rest, packing.mostPieces) + 1, empty];
      for (let tried = Math.min(guess, bad - 1); good + 1 < bad; ) {
        forget();
        const stack = fill(next(tried), tried, Number.POSITIVE_INFINITY);
        if (stack.count === tried) [good, best] = [tried, stack];
        else bad = tried;
        tried = bad > rest ? Math.min(2 * good, bad - 1) : (good + bad) >> 1;
        tried = Math.max(good + 1, Math.min(tried, bad - 1));
      }
      if (good === 0) return { stacks, stuck: next(rest) };
      if (rest - good === 1 && good > 2) {
        forget();
        const fewer = fill(next(good - 1), good - 1, Number.POSITIVE_INFINITY);
        if (fewer.count === good - 1) [good, best] = [fewer.count, fewer];
      }
      stacks.push(best);
      guess = good;
      rest -= good;
      for (let missing = good; missing > 0; ) {
        const here = Math.min(missing, parts[row].row.count - used);
        missing -= here;
        used += here;
        if (used === parts[row].row.count) [row, used] = [row + 1, 0];
      }
    }
    return { stacks, stuck: undefined };
  }

  return { build, inTurn, perLoad, pieces, volume: volumeOf(counts), careful: isFew };
}

export type Packer = ReturnType<typeof packer>;

/** The first so many places of a full layer. */
function firstRuns(layer: Parameters<typeof blocksToPlaces>[0], many: number, size: number): Run[] {
  const runs: Run[] = [];
  let missing = many;
  for (const block of layer.blocks) {
    if (missing <= 0) break;
    const whole = Math.min(block.rows, Math.floor(missing / block.columns));
    if (whole > 0) runs.push({ ...block, rows: whole, size });
    missing -= whole * block.columns;
    if (whole < block.rows && missing > 0) {
      runs.push({ ...block, y: block.y + whole * (block.dy + layer.gap), rows: 1, columns: missing, size });
      missing = 0;
    }
  }
  return runs;
}
