import { isFault } from "../../../shared/outcome";
import { slack } from "../../../src/plan/clock";
import type { Given } from "../../../src/plan/given";
import type { Load } from "../../../src/plan/loads";
import { placesOf } from "../../../src/plan/places";
import type { Plan } from "../../../src/plan/planned";
import type { Tub } from "../../../src/plan/tub";

/** Moments closer than the clock tells apart. */
const bit = 2 * slack;

/** What is wrong with where the pieces of a plan lie; nothing, if they are all inside and none overlap. */
export function misplaced({ loads, tub }: { loads: readonly Load[]; tub: Tub }, given: Given): string | undefined {
  const { section, height } = tub;
  const slackness = 1e-8;
  for (const [n, load] of loads.entries()) {
    const { places, plates } = placesOf(load, given.gap);
    if (places.length !== load.count) return `load ${n}: ${places.length} places for ${load.count} pieces`;
    const counted = new Map<unknown, number>();
    for (const { part } of places) counted.set(part, (counted.get(part) ?? 0) + 1);
    for (const { part, count } of load.shares) if (counted.get(part) !== count) return `load ${n}: not the pieces that it says`;
    if (load.stack.height + given.cover > height * (1 - given.foamRoom) + slackness) return `load ${n}: no room for cover and foam`;
    for (const [i, p] of places.entries()) {
      const sides = [p.part.row.thickness, p.part.row.width, p.part.row.length].sort((a, b) => a - b);
      [p.dx, p.dy, p.dz]
        .sort((a, b) => a - b)
        .forEach((side, s) => {
          if (Math.abs(side - sides[s]) > slackness) throw new Error(`load ${n}: piece ${i} has other sides`);
        });
      if ((p.way === "upright") !== Math.abs(p.dz - p.part.row.length) < slackness && p.way === "upright")
        return `load ${n}: piece ${i} does not stand`;
      const [x, y] = [Math.max(-p.x, p.x + p.dx), Math.max(-p.y, p.y + p.dy)];
      const off =
        section.shape === "round" ? section.diameter / 2 - Math.hypot(x, y) : Math.min(section.length / 2 - x, section.width / 2 - y);
      if (off < given.gap - slackness) return `load ${n}: piece ${i} is ${off} off the wall`;
      if (p.z < -slackness || p.z + p.dz > load.stack.height + slackness) return `load ${n}: piece ${i} stands out of the stack`;
      for (const plate of plates)
        if (Math.min(p.z + p.dz, plate.z + plate.height) - Math.max(p.z, plate.z) > slackness) return `load ${n}: piece ${i} is in a plate`;
      for (let j = 0; j < i; j++) {
        const q = places[j];
        if (q.layer !== p.layer) {
          if (Math.min(p.z + p.dz, q.z + q.dz) - Math.max(p.z, q.z) > slackness) return `load ${n}: layers of ${i} and ${j} overlap`;
          continue;
        }
        const apart = Math.max(p.x - q.x - q.dx, q.x - p.x - p.dx, p.y - q.y - q.dy, q.y - p.y - p.dy);
        if (apart < given.gap - slackness) return `load ${n}: pieces ${i} and ${j} are ${apart} apart`;
      }
    }
  }
  return undefined;
}

type Span = readonly [from: number, to: number, what: string];

const overlap = (spans: Span[], at: string): string | undefined => {
  const sorted = spans.filter(([from, to]) => to - from > slack).sort((a, b) => a[0] - b[0]);
  for (let i = 1; i < sorted.length; i++)
    if (sorted[i][0] < sorted[i - 1][1] - bit) return `${at} is in two places: ${sorted[i - 1]} and ${sorted[i]}`;
  return undefined;
};

/** What is wrong with the times of a plan: somebody in two places, or at work outside open hours. */
export function mistimed({ loads, tub, clock }: Plan, given: Given): string | undefined {
  const { loadingMinutes: loading, vacuumHours: vacuum, soakHours: soak, wrapMinutesPerPiece: wrap } = given;
  const person: Span[] = [];
  const oven: Span[] = [];
  const chamber: Span[] = [];
  const open = (from: number, to: number, what: string): string | undefined =>
    Math.abs(clock.first(from, to - from) - from) > bit ? `${what} from ${from} to ${to} is outside open hours` : undefined;
  const pulls = new Map<number, typeof loads>();
  for (const load of loads) pulls.set(load.pull, [...(pulls.get(load.pull) ?? []), load]);
  for (const own of pulls.values()) {
    const [{ from, in: begin }] = own;
    if (own.length > tub.abreast) return "more tubs under vacuum than stand in the chamber";
    if (own.some((load) => load.in !== begin)) return "one pull begins at two moments";
    if (Math.abs(begin - from - own.length * loading) > bit) return "a pull is not loaded just before it begins";
    person.push([from, begin, "loading"]);
    const wrong = open(from, begin + vacuum, "a pull");
    if (wrong) return wrong;
    chamber.push([from, tub.beside ? begin + vacuum : own[0].out + loading, "pull"]);
  }
  const tubs: [number, number][] = [];
  for (const load of loads) {
    const { from, in: begin, out, wrapping, wrapped, starts, batches, done, count } = load;
    if (out < begin + vacuum + soak - bit) return "taken out before it has soaked";
    if (wrapping < out + loading - bit) return "wrapped while it is taken out";
    if (Math.abs(wrapped - wrapping - count * wrap) > bit) return "wrapping takes another time";
    if (starts.length !== batches.length || starts[0] < wrapped - bit) return "baked before it is wrapped";
    person.push([out, out + loading, "taking out"], [wrapping, wrapped, "wrapping"]);
    for (const [i, start] of starts.entries()) {
      oven.push([start, start + batches[i], "batch"]);
      const wrong = open(start, start + batches[i], "a batch");
      if (wrong) return wrong;
    }
    const day = batches.reduce((all, one) => all + one, loading + count * wrap);
    const wrong = open(out, day <= clock.hours + slack ? done : starts[0] + batches[0], "what follows taking out");
    if (wrong) return wrong;
    tubs.push([from, out + loading]);
  }
  for (const [at] of tubs)
    if (tubs.filter(([from, to]) => from <= at + bit && to > at + bit).length > tub.many) return "more tubs than there are";
  return overlap(person, "the person") ?? overlap(oven, "the oven") ?? overlap(chamber, "the chamber");
}

/** What is wrong with the resin of a plan. */
export function miscounted({ loads, colors }: Plan, given: Given): string | undefined {
  const near = (a: number, b: number, scale: number) => Math.abs(a - b) <= 1e-9 * (scale + 1e-6);
  for (const [c, { begin, entries, left, discarded, name }] of colors.entries()) {
    const own = loads.filter(({ color }) => color === c);
    const sum = (of: (load: (typeof own)[number]) => number) => own.reduce((all, load) => all + of(load), 0);
    const mixed = sum((load) => load.mixed);
    if (!near(begin.volume + mixed, sum((load) => load.uptake + load.dripped) + left + discarded, begin.volume + mixed))
      return `resin of “${name}” is lost or made`;
    if (entries.length !== own.length) return "an entry too many";
    for (const load of own) {
      if (!near(load.mixed, load.packets * given.packetMakes, load.mixed)) return "broken packets";
      if (load.onHand + load.mixed < load.need * (1 - 1e-9)) return "less than it needs";
      if (load.packets && load.onHand + load.mixed - given.packetMakes > load.need * (1 + 1e-9)) return "a packet too many";
      if (load.pour + load.add > (load.onHand + load.mixed) * (1 + 1e-9) + 1e-12) return "more poured than there is";
      if (load.pour + load.add < load.need * (1 - 1e-9)) return "poured less than it needs";
      if (isFault(load.useBy)) return "a fault where trouble is due";
    }
    const most = given.mostResin ?? Number.POSITIVE_INFINITY;
    for (const load of own) {
      const beside = own.filter((other) => other.from <= load.from + slack && other.out > load.from + slack);
      const standing = beside.reduce((all, other) => all + other.pour + other.add, 0);
      if (standing > most * (1 + 1e-8)) return `${standing} stands in tubs at once, of ${most}`;
    }
  }
  return undefined;
}
