import { badInput, noAnswer, said } from "../../shared/outcome";
import type { Shape } from "../chamber/stratum";
import { type Load, loadsOf } from "./loads";
import { type Packer, packer, type Stacks } from "./pack";
import { leastNeed, type Part, type Shop } from "./parts";
import type { Unplanned } from "./pieces";
import type { Tub } from "./tub";

/** Up to this number of pieces the order as typed is tried too, so that no plan ends later than working down the list. */
const turnedUpTo = 1000;

/** Most loads of a plan: nobody reads more, and the spreadsheet would wait for them. */
const mostPieces = 1e6;

export interface Whole extends Shop {
  readonly drips: number;
}

/** Loads for all colors together: one way to part the list. */
export type LoadSet = readonly Load[];

export interface Sets {
  /** Ways to part the list, the fewest loads first; none of them is known to be best before the clock has run. */
  readonly best: readonly LoadSet[];
  readonly inTurn: LoadSet | undefined;
  readonly unplanned: readonly Unplanned[];
}

type Kind = "even" | "evenly, simpler" | "tight" | "one more" | "full pulls" | "in turn";
type Options = Partial<Record<Kind, Stacks>>;

export function refuseEndless(parts: readonly Part[]): void {
  const pieces = parts.reduce((sum, { row }) => sum + row.count, 0);
  if (pieces > mostPieces) throw badInput`${pieces} pieces are more than a plan can hold, ${mostPieces}: plan fewer at a time`;
}

type Fewest = ReturnType<Packer["fewest"]>;

/** A given number of loads, each with its share of the pieces; the share is raised until all pieces are in. */
function evenly(color: Packer, loads: number, view: Fewest["view"]): Stacks | undefined {
  for (const more of color.careful ? [1, 1.05, 1.12, 1.25] : [1, 1.1]) {
    const made = color.build({ view, loads, more });
    if (!made.stuck) return made;
  }
  return undefined;
}

/** Ways to part one color. */
function optionsOf(color: Packer, abreast: number, typed: boolean): { options: Options; stuck?: Int32Array; upright: number } {
  if (typed) {
    const made = color.inTurn();
    return { options: made.stuck ? {} : { "in turn": made }, stuck: made.stuck, upright: Number.POSITIVE_INFINITY };
  }
  const tight = color.fewest();
  const plain = color.careful ? color.build({ tried: [["upright"]] }) : undefined;
  const upright = plain && !plain.stuck ? plain.stacks.length : Number.POSITIVE_INFINITY;
  if (plain && !plain.stuck && (tight.stuck || plain.stacks.length < tight.stacks.length)) return { options: { tight: plain }, upright };
  const fewest = tight.stacks.length;
  const even = fewest > 1 ? evenly(color, fewest, tight.view) : undefined;
  if (tight.stuck) {
    // More left over than the end of a load explains: no share will do.
    if (tight.stuck.reduce((sum, many) => sum + many, 0) > color.pieces / 4) return { options: {}, stuck: tight.stuck, upright };
    // The last load holds too little: a smaller share may leave enough for it.
    for (let loads = fewest; loads <= fewest + 2; loads++) {
      const made = loads > 1 ? evenly(color, loads, tight.view) : undefined;
      if (made) return { options: { even: made }, upright };
    }
    return { options: {}, stuck: tight.stuck, upright };
  }
  const options: Options = { tight, ...(even && { even }) };
  if (color.careful && fewest < 40) {
    if (color.simpler && fewest > 1) options["evenly, simpler"] = evenly(color, fewest, color.simpler);
    const rounded = Math.ceil(fewest / abreast) * abreast;
    options["one more"] = color.pieces > fewest ? evenly(color, fewest + 1, tight.view) : undefined;
    if (rounded > fewest + 1) options["full pulls"] = evenly(color, rounded, tight.view);
  }
  if (color.pieces <= turnedUpTo) {
    const turn = color.inTurn();
    if (!turn.stuck) options["in turn"] = turn;
  }
  return { options, upright };
}

const workOf = (parts: readonly Part[]): number =>
  parts.reduce((sum, { row }) => sum + row.count, 0) * new Set(parts.map(({ size }) => size)).size;

interface Color {
  readonly options: Options;
  readonly parts: readonly Part[];
  readonly upright: number;
}

const needSaid = (need: number) =>
  noAnswer`even the smallest load with this row needs ${said("fluid", need)} of resin, more than the setting “most resin” allows at once`;

/** One color under a limit; rows that go into no load under it are left out and told. Undefined where they are more than may be. */
function colorOf(
  parts: readonly Part[],
  shapes: readonly Shape[],
  tub: Tub,
  shop: Whole,
  mostResin: number,
  typed: boolean,
  work: number,
  mayLose: number,
): (Color & { unplanned: Unplanned[] }) | undefined {
  const unplanned: Unplanned[] = [];
  let open = parts;
  const capped = shop.wrapMinutesPerPiece > 0;
  for (let round = 0; open.length; round++) {
    const slowest = open.reduce((most, { bake }) => Math.max(most, bake), 0);
    const most = capped ? Math.floor((shop.hours - shop.loadingMinutes - slowest) / shop.wrapMinutesPerPiece + 1e-9) : mostPieces;
    const color = packer({ shapes, parts: open, tub, bath: shop, mostPieces: Math.max(1, most), mostResin, work });
    const { options, stuck, upright } = optionsOf(color, tub.abreast, typed);
    if (!stuck) return { options, parts: open, unplanned, upright };
    const out = (part: Part) => stuck[part.size] > 0 || round > 8;
    for (const part of open.filter(out)) {
      const need = leastNeed(part, tub, shop);
      const trouble = needSaid(Math.max(need, mostResin * 1.0001));
      unplanned.push({ label: part.row.label, index: part.row.index, trouble });
    }
    if (unplanned.length > mayLose) return undefined;
    open = open.filter((part) => !out(part));
  }
  return { options: {}, parts: [], unplanned, upright: 0 };
}

/** Ways to part the whole list into loads, color by color, none of which needs more than the limit; undefined where that leaves out more rows than may be. */
export function setsOf(
  colors: readonly (readonly Part[])[],
  shapes: readonly Shape[],
  tub: Tub,
  shop: Whole,
  mostResin: number,
  typed: boolean,
  mayLose = Number.POSITIVE_INFINITY,
): Sets | undefined {
  const made: NonNullable<ReturnType<typeof colorOf>>[] = [];
  const hardest = (parts: readonly Part[]) => parts.reduce((most, part) => Math.max(most, leastNeed(part, tub, shop)), 0);
  // The colors most likely to fail come first, before work goes into the others.
  const turns = colors.map((parts, color) => ({ parts, color, hard: mayLose < Number.POSITIVE_INFINITY ? hardest(parts) : 0 }));
  let lost = 0;
  const work = colors.reduce((sum, parts) => sum + workOf(parts), 0);
  for (const { parts, color } of turns.sort((a, b) => b.hard - a.hard)) {
    const own = colorOf(parts, shapes, tub, shop, mostResin, typed, work, mayLose - lost);
    if (!own) return undefined;
    lost += own.unplanned.length;
    made[color] = own;
  }
  const unplanned = made.flatMap((color) => color.unplanned);
  const upright = made.reduce((sum, color) => sum + color.upright, 0);
  const of = (kind: Kind): LoadSet =>
    made.flatMap(({ options, parts }, color) => {
      const stacks = (options[kind] ?? options.tight ?? options.even ?? options["in turn"])?.stacks ?? [];
      return loadsOf(stacks, parts, shapes, color, tub, shop);
    });
  const kinds = (["tight", "even", "evenly, simpler", "one more", "full pulls"] as const).filter((kind) =>
    made.some(({ options }) => options[kind]),
  );
  const sets = kinds.map(of);
  const fewest = Math.min(...sets.map(({ length }) => length));
  const inTurn = made.some(({ options }) => options["in turn"]) ? of("in turn") : undefined;
  return { best: sets.filter(({ length }) => length <= Math.max(fewest, upright)), inTurn, unplanned };
}
