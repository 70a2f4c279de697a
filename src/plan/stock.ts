import { badInput, noAnswer, type Trouble } from "../../shared/outcome";
import { isoDate } from "../../shared/serial";
import { dyeToAdd } from "../resin/dyetopup";
import { useBy } from "../resin/expiry";
import { packetsFor } from "../resin/mix";
import { attempt, isTrouble } from "./attempt";

/** What a color begins with. */
export interface Begin {
  readonly volume: number;
  /** Dye in it, volume to volume; undefined where unknown. */
  readonly strength?: number;
  /** Day its oldest part was mixed: a serial, or a number of days; unknown counts from the first loading. */
  readonly since?: number;
  /** What it is dyed to. */
  readonly rate: number;
}

/** What a load asks of the stock. Moments are days. */
export interface Draw {
  readonly need: number;
  readonly cover: number;
  readonly uptake: number;
  readonly drips: number;
  readonly from: number;
  readonly in: number;
  readonly out: number;
}

/** What one load takes and brings back. */
export interface Entry {
  readonly onHand: number;
  readonly pour: number;
  readonly add: number;
  readonly mixed: number;
  readonly packets: number;
  /** Dye to add, or why none brings it to the rate. */
  readonly dye: number | Trouble;
  /** Resin lost on the pieces, m³: no more than there is. */
  readonly dripped: number;
  /** What comes back out of the tub. */
  readonly back: number;
  /** Last day of its oldest part. */
  readonly useBy: number | Trouble;
}

export interface Stock {
  readonly entries: readonly Entry[];
  readonly left: number;
  readonly discarded: number;
}

export interface Habits {
  readonly packetMakes: number;
  /** Most mixed resin in tubs at once, m³. */
  readonly most: number;
  /** The last day of resin mixed on a day. */
  readonly lastDay: (mixed: number) => number;
  readonly dated: boolean;
}

interface Standing {
  readonly out: number;
  readonly volume: number;
  readonly back: number;
  readonly strength: number | undefined;
  readonly batch: number;
}

const bit = 1e-9;

const dayOf = (moment: number): number => Math.floor(moment + bit);

/** Use-by of resin in a plan with dates; in one without, a month is 30 days. */
export const lastDayOf =
  (months: number, dated: boolean) =>
  (mixed: number): number =>
    dated ? useBy(mixed, months) : mixed + 30 * Math.trunc(months);

const blend = (a: number, strengthA: number | undefined, b: number, strengthB: number | undefined): number | undefined => {
  if (a <= 0) return strengthB;
  if (b <= 0) return strengthA;
  return strengthA === undefined || strengthB === undefined ? undefined : (a * strengthA + b * strengthB) / (a + b);
};

/** One color through all of its loads, in the order in which they are loaded. */
export function stockOf(begin: Begin, draws: readonly Draw[], { packetMakes, most, lastDay, dated }: Habits): Stock {
  let shelf = begin.volume;
  let strength = begin.volume > 0 ? begin.strength : begin.rate;
  let since: number | undefined = begin.volume > 0 && draws.length ? (begin.since ?? dayOf(draws[0].from)) : undefined;
  let batch = 0;
  let discarded = 0;
  let standing: Standing[] = [];
  const back = (until: number): void => {
    const due = standing.filter(({ out }) => out <= until + bit).sort((a, b) => a.out - b.out);
    if (!due.length) return;
    standing = standing.filter(({ out }) => out > until + bit);
    for (const one of due) {
      if (one.batch !== batch) discarded += one.back;
      else {
        strength = blend(shelf, strength, one.back, one.strength);
        shelf += one.back;
      }
    }
  };
  /** Resin that later loads will need while this one still soaks: the limit must leave room for them. */
  const neededBeside = (i: number): number => {
    if (most === Number.POSITIVE_INFINITY) return 0;
    let sum = 0;
    for (let j = i + 1; j < draws.length && draws[j].from < draws[i].out - bit; j++) sum += draws[j].need;
    return sum;
  };
  const entries = draws.map((draw, i): Entry => {
    back(draw.from);
    const inTubs = standing.reduce((sum, { volume }) => sum + volume, 0);
    const alive = shelf > bit * (begin.volume + draw.need) || standing.some((one) => one.batch === batch);
    if (!alive) {
      shelf = 0;
      since = undefined;
    }
    if (since !== undefined && draw.out > lastDay(since) + 1 + bit) {
      discarded += shelf;
      [shelf, since] = [0, undefined];
      batch++;
    }
    const onHand = shelf;
    since ??= dayOf(draw.in);
    const { packets, mixed } = packetsFor(draw.need, onHand, packetMakes);
    const dye =
      onHand > 0 && strength === undefined
        ? badInput`type the dye rate of the resin on hand`
        : attempt(() => dyeToAdd(onHand, strength ?? begin.rate, mixed, begin.rate));
    const dyed = !isTrouble(dye) ? begin.rate : strength === undefined ? undefined : (onHand * strength) / (onHand + mixed);
    const pour = Math.min(draw.cover, onHand + mixed, Math.max(draw.need, most - inTubs - neededBeside(i)));
    const add = Math.max(0, draw.need - pour);
    const volume = Math.min(onHand + mixed, pour + add);
    const dripped = Math.min(draw.drips, Math.max(0, volume - draw.uptake));
    const left = Math.max(0, volume - draw.uptake - dripped);
    shelf = Math.max(0, onHand + mixed - volume);
    strength = dyed;
    standing.push({ out: draw.out, volume, back: left, strength: dyed, batch });
    const last = since;
    const good = attempt(() => {
      const day = lastDay(last);
      if (draw.out > day + 1 + bit) {
        if (!dated) throw noAnswer`even resin mixed for this load expires before the load comes out: check “catalyzed months”`;
        throw noAnswer`even resin mixed for this load expires after ${isoDate(day)}, and the load comes out on ${isoDate(draw.out)}: check “catalyzed months”`;
      }
      return day;
    });
    return { onHand, pour, add, mixed, packets, dye, dripped, back: left, useBy: good };
  });
  back(Number.POSITIVE_INFINITY);
  return { entries, left: shelf, discarded };
}
