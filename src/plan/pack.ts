import { badInput } from "../../shared/outcome";
import { fair, quick, thorough } from "../chamber/mixed";
import { type Care, forgotten, type Memory, newMemory } from "../chamber/options";
import type { Pool } from "../chamber/rows";
import { type Stack, stackUp, unstack } from "../chamber/stack";
import type { Room, Way } from "../chamber/stratum";
import { packInTurn } from "./inturn";
import { oneSize } from "./onesize";
import { type Packing, roomOf } from "./packing";

const both: readonly Way[] = ["upright", "lying"];
const waysTried: readonly (readonly Way[])[] = [both, ["lying"], ["upright"]];

export interface Stacks {
  readonly stacks: readonly Stack[];
  /** Pieces of each size that went into no load under the limit. */
  readonly stuck: Int32Array | undefined;
}

/** Sizes with what a piece of each is worth to the load that takes it, and how much is tried. */
interface View {
  readonly care: Care;
  readonly room: Room;
  readonly memory: Memory;
}

interface Wanted {
  readonly view?: View;
  /** A number of loads, evenly filled; left out: as few as possible. */
  readonly loads?: number;
  /** The part of an even share that each load may take. */
  readonly more?: number;
  readonly tried?: readonly (readonly Way[])[];
}

/** Most loads: nobody reads more, and the spreadsheet would wait for them. */
const mostLoads = 1e5;
const tooMany = (loads: number) => badInput`${loads} loads are more than a plan can hold, ${mostLoads}: plan fewer pieces at a time`;

const empty: Stack = { strata: [], height: 0, count: 0, worth: 0 };

/** Up to this number of pieces several ways to fill a tub are tried. */
const few = 400;
const hasty: Care = { ...quick, heights: 4 };
const calm: Care = { ...fair, heights: 6 };
const keen: Care = { ...thorough, heights: 14 };
/** Pieces times sizes up to which everything is tried: above it takes too long. */
const patience = 5000;

/** How often a list is packed anew with other weights: as often as its pieces and sizes leave time for, up to this number. */
const mostTries = 12;

function take({ strata }: Stack, left: Int32Array): void {
  for (const { runs } of strata) for (const { size, columns, rows } of runs) left[size] -= columns * rows;
}

function onlySize({ strata }: Stack): number | undefined {
  const size = strata[0]?.runs[0]?.size;
  return size !== undefined && strata.every(({ runs }) => runs.every((run) => run.size === size)) ? size : undefined;
}

/** Fills tubs with the pieces of one color. */
export function packer(packing: Packing) {
  const { shapes, parts, tub, bath } = packing;
  const room = roomOf(packing);
  const pieces = parts.reduce((sum, { row }) => sum + row.count, 0);
  const isFew = pieces <= few;
  const counts = new Int32Array(shapes.length);
  for (const { size, row } of parts) counts[size] += row.count;
  const here = shapes.map((_, size) => size).filter((size) => counts[size] > 0);
  const sumOf = (left: Int32Array, { room: { shapes: own } }: View) => left.reduce((sum, many, size) => sum + many * own[size].volume, 0);
  const isKeen = isFew && packing.work <= patience;
  const plain: View = { care: isKeen ? keen : isFew ? calm : hasty, room, memory: newMemory(shapes) };
  const { perLoad, stackOf } = oneSize(shapes, tub.section, bath.gap, room.height);

  /** The best filling of one tub from what is left, at most so many pieces and so much of them; it is taken out. */
  function fill(view: View, left: Int32Array, count: number, worth: number, tried = waysTried): Stack {
    const each = view.room.shapes;
    const pool: Pool = { left, count: Math.min(count, packing.mostPieces), worth };
    const mostOf = (size: number) => Math.min(left[size], perLoad(size), pool.count, Math.floor((worth / each[size].volume) * (1 + 1e-9)));
    const ofOne = (size: number, many: number): Stack => ({ ...stackOf(size, many), worth: many * each[size].volume });
    if (here.length === 1 && !room.affords) {
      const many = mostOf(here[0]);
      const stack = many > 0 ? ofOne(here[0], many) : empty;
      take(stack, left);
      return stack;
    }
    let best = empty;
    for (const ways of tried) {
      const { count: most } = pool;
      let stack = stackUp(ways, view.room, pool, view.care, view.memory);
      unstack(stack, pool);
      pool.count = most;
      pool.worth = worth;
      const size = onlySize(stack);
      if (size !== undefined) {
        const many = mostOf(size);
        const other = many >= stack.count || many >= perLoad(size) ? ofOne(size, Math.max(1, many)) : stack;
        const runs = other.strata.flatMap((stratum) => stratum.runs);
        if (!room.affords || room.affords(other.height, runs)) stack = other;
      }
      const more = stack.worth - best.worth;
      if (more > 1e-9 * best.worth || (more > -1e-9 * best.worth && stack.height < best.height - 1e-9)) best = stack;
    }
    take(best, left);
    return best;
  }

  const volumeIn = ({ strata }: Stack): number => {
    let volume = 0;
    for (const { runs } of strata) for (const { size, columns, rows } of runs) volume += columns * rows * shapes[size].volume;
    return volume;
  };

  const fresh = (view: View): View => ({ ...view, memory: forgotten(view.memory) });

  /** As few loads as the packing finds; or a number of them, evenly filled. */
  function build({ view: asked = plain, loads, more = 1, tried = isFew ? waysTried : [both] }: Wanted = {}): Stacks {
    const view = fresh(asked);
    const left = counts.slice();
    let count = pieces;
    let worth = sumOf(left, view);
    const largest = here.reduce((most, size) => Math.max(most, view.room.shapes[size].volume), 0);
    const stacks: Stack[] = [];
    while (count > 0) {
      if (stacks.length > mostLoads) throw tooMany(Math.ceil((pieces / (pieces - count)) * stacks.length));
      const open = loads === undefined ? 1 : loads - stacks.length;
      if (open < 1) return { stacks, stuck: left };
      const share = open > 1 ? (worth / open) * more + largest * 0.999999 : worth * (1 + 1e-9);
      const many = open > 1 ? Math.ceil((count / open) * more * 1.5) : count;
      let stack = fill(view, left, many, share, tried);
      if (stack.count === 0) return { stacks, stuck: left };
      if (count - stack.count === 1 && stack.count > 2) {
        // One piece less here, so that the very last one does not need a load of its own.
        unstack(stack, { left, count: 0, worth: 0 });
        stack = fill(view, left, stack.count - 1, share, tried);
      }
      count -= stack.count;
      worth -= stack.worth;
      stacks.push({ ...stack, worth: volumeIn(stack) });
    }
    return { stacks, stuck: undefined };
  }

  const viewOf = (worths: readonly number[]): View => {
    const own = shapes.map((shape, size) => ({ ...shape, volume: worths[size] }));
    return { ...plain, room: { ...room, shapes: own }, memory: newMemory(own) };
  };

  /**
   * As few loads as several goes find. What fills a tub badly is worth more in the next go, so that it is packed while
   * there is something to put beside it.
   */
  function fewest(): Stacks & { readonly view: View } {
    let best = { ...build(), view: plain };
    const least = Math.ceil((sumOf(counts, plain) / (tub.area * room.height)) * (1 - 1e-9));
    const tries = isKeen && here.length > 1 ? Math.min(room.affords ? 2 : mostTries, Math.floor((2 * patience) / packing.work)) : 0;
    let worths = shapes.map(({ volume }) => volume);
    let last: Stacks = best;
    for (let go = 0; go < tries && (best.stuck || best.stacks.length > least); go++) {
      if (go === 0) {
        worths = shapes.map(({ volume }, size) => (counts[size] && perLoad(size) > 0 ? (tub.area * room.height) / perLoad(size) : volume));
      } else {
        const badly = new Float64Array(shapes.length);
        for (const stack of last.stacks) {
          const price = 1 / Math.max(0.05, stack.worth / (tub.area * room.height));
          for (const { runs } of stack.strata) for (const { size, columns, rows } of runs) badly[size] += columns * rows * price;
        }
        worths = worths.map((worth, size) =>
          counts[size] ? 0.5 * worth + 0.5 * shapes[size].volume * (badly[size] / counts[size]) : worth,
        );
      }
      const view = viewOf(worths);
      last = build({ view });
      if (!last.stuck && (best.stuck || last.stacks.length < best.stacks.length)) best = { ...last, view };
    }
    return best;
  }

  const inTurn = (): Stacks =>
    packInTurn(parts, shapes.length, packing.mostPieces, (left, count) => fill(fresh(plain), left, count, Number.POSITIVE_INFINITY));

  return { build, fewest, inTurn, pieces, careful: isFew, simpler: isKeen ? { ...plain, care: calm } : undefined };
}

export type Packer = ReturnType<typeof packer>;
