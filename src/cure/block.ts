import { remaining, type Slab, slab, term } from "./slab";

/** Wood conducts about this much better along the grain: Wood Handbook ch. 4, 1.5 to 2.8. */
const alongGrain = 1.8;

/** A piece in meters; the grain runs along the length. A width left out makes it square, a length left out an endless bar. */
export interface Sides {
  readonly thickness: number;
  readonly width?: number;
  readonly length?: number;
}

/** The finite sides: two across the grain, then the length where it ends. */
export const sidesOf = ({ thickness, width = thickness, length }: Sides): number[] =>
  length === undefined ? [thickness, width] : [thickness, width, length];

/** A block is where slabs cross, one for each finite direction. */
export function block(sides: Sides, h: number, k: number, heat: number): Slab[] {
  return sidesOf(sides).map((side, i) => slab(side / 2, h, i === 2 ? k * alongGrain : k, heat));
}

/** Share of the first temperature difference left at the core: the product of the directions (Incropera, 5.8). */
export const atCore = (slabs: readonly Slab[], seconds: number): number =>
  slabs.reduce((ratio, slab) => ratio * remaining(slab, seconds).share, 1);

/** The same in the middle of the widest face, which lies across the thinnest direction. */
export function atFace(slabs: readonly Slab[], sides: Sides, seconds: number): number {
  const finite = sidesOf(sides);
  const thinnest = finite.indexOf(Math.min(...finite));
  return slabs.reduce((ratio, slab, i) => ratio * remaining(slab, seconds, i === thinnest ? 1 : 0).share, 1);
}

/**
 * Seconds until the core's share of the first difference has fallen to `target` (above 0, below 1).
 *
 * The first term of each series alone gives a time that is never early, and the logarithm of the share is concave in
 * time (the transform of each series is a product of 1/(1 + s/ζ²), a sum of exponential waits), so Newton's method
 * comes down from there without overshooting.
 */
export function secondsTo(slabs: readonly Slab[], target: number): number {
  let rate = 0;
  let ahead = -Math.log(target);
  for (const slab of slabs) {
    const { zeta, c } = term(slab, 0);
    rate += slab.pace * zeta ** 2;
    ahead += Math.log(c);
  }
  let at = ahead / rate;
  for (let i = 0; i < 100; i++) {
    let off = -Math.log(target);
    let fall = 0;
    for (const slab of slabs) {
      const left = remaining(slab, at);
      off += Math.log(left.share);
      fall += left.fall / left.share;
    }
    if (fall <= 0) break;
    const step = off / fall;
    at = Math.max(at / 2, at + step);
    if (Math.abs(step) < 1e-14 * at) break;
  }
  // A hair late, so that the core put back in reads no less than was asked for.
  return at * (1 + 1e-12);
}
