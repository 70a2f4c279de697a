import type { Place } from "../../src/chamber/blocks";
import type { Bath } from "./bath";
import { spanOf } from "./vessel";

/** A rectangle in the chamber, in meters: x from the middle, y up from the floor. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A section through the chamber parallel to x. */
export interface Cut {
  /** How far off the middle it goes, and how wide the chamber is there, in meters. */
  readonly off: number;
  readonly width: number;
  readonly pieces: readonly Box[];
  /** The places of a layer that have a piece in the top one. */
  readonly top: ReadonlySet<Place>;
  /** Where along the cut the middle of those is that it meets: the ballast lies on them. */
  readonly middle: number;
}

const crossed = (places: readonly Place[], line: number) => places.filter(({ y, dy }) => y < line && line < y + dy);

/** The line near the middle that crosses most pieces, of equals the nearest: the middle itself may be a joint. */
function lineOf(places: readonly Place[]): number {
  const short = places.reduce((least, { dx, dy }) => Math.min(least, dx, dy), Number.POSITIVE_INFINITY);
  const edges = [...new Set(places.flatMap(({ y, dy }) => [y, y + dy]))].sort((a, b) => a - b);
  // Between two neighboring edges every line meets the same pieces; what is narrower than the eye sees does not count.
  const lines = edges.slice(1).flatMap((high, i) => {
    const low = edges[i];
    const inside = Math.min((high - low) / 2, short / 4);
    return high - low < short / 20 ? [] : [Math.min(high - inside, Math.max(low + inside, 0))];
  });
  const many = (line: number) => crossed(places, line).length;
  const nearest = lines.sort((a, b) => Math.abs(a) - Math.abs(b));
  const close = nearest.filter((line) => Math.abs(line) <= short).map((line) => ({ line, meets: many(line) }));
  const best = close.reduce((a, b) => (b.meets > a.meets ? b : a), { line: 0, meets: 0 });
  return best.meets ? best.line : (nearest.find(many) ?? 0);
}

/** The places nearest to the middle, where a last layer that is not full lies; the cut is to meet it, so first one that is cut. */
function topOf(places: readonly Place[], line: number, last: number): ReadonlySet<Place> {
  const away = ({ x, y, dx, dy }: Place) => Math.hypot(x + dx / 2, y + dy / 2);
  const nearest = [...places].sort((a, b) => away(a) - away(b));
  return new Set([...new Set([...crossed(nearest, line).slice(0, 1), ...nearest])].slice(0, last));
}

const widthAt = ({ section }: Bath, line: number): number =>
  section.shape === "round" ? Math.sqrt(Math.max(0, section.diameter ** 2 - 4 * line ** 2)) : section.length;

/** Pieces and ballast as one block, where only their volume and the height of the stack are known. */
function blockOf({ section, stack, solids }: Bath): Box[] {
  if (!stack || !solids) return [];
  const [width, breadth] = spanOf(section);
  const share = Math.min(1, solids / (stack * width * breadth * (section.shape === "round" ? Math.PI / 4 : 1)));
  return [{ x: (-width * share) / 2, y: 0, width: width * share, height: stack }];
}

/** The chamber cut open where the plan of its layers says: both are drawn from the same places. */
export function cutOf(bath: Bath): Cut {
  const { places, layers = 1, last = 0, stack = 0 } = bath;
  if (!places) return { off: 0, width: widthAt(bath, 0), pieces: blockOf(bath), top: new Set(), middle: 0 };
  const off = lineOf(places);
  const top = topOf(places, off, last);
  const height = stack / layers;
  const met = crossed(places, off);
  const pieces = Array.from({ length: layers }, (_, layer) =>
    met.filter((place) => layer < layers - 1 || top.has(place)).map(({ x, dx }): Box => ({ x, y: layer * height, width: dx, height })),
  );
  const under = met.filter((place) => top.has(place));
  const sum = (of: (place: Place) => number) => under.reduce((all, place) => all + of(place), 0);
  const middle = under.length ? sum(({ x, dx }) => dx * (x + dx / 2)) / sum(({ dx }) => dx) : 0;
  return { off, width: widthAt(bath, off), pieces: pieces.flat(), top, middle };
}
