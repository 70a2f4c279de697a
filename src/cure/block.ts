import { wallGravity } from "../wood/voids";
import { remaining, type Slab, slab } from "./slab";

/** The wood's and the resin's heat, from published values: see `source` of BAKE. */
const resin = { k: 0.19, density: 1190, heat: 1470 };
const air = { k: 0.026 };
/** J/kgK of dry wood at 330 K: cp = 0.1031 + 0.003867 T, Wood Handbook ch. 4. */
const woodHeat = 1379;
/** Wood conducts about this much better along the grain: Wood Handbook ch. 4, 1.5 to 2.8. */
const alongGrain = 1.8;

/** Across the grain, W/mK, and heat to warm a cubic metre, J/m³K, of wood whose pores are partly full of cured resin. */
export interface Stuff {
  readonly k: number;
  readonly least: number;
  readonly most: number;
  readonly heat: number;
}

/** Conductivity between the parallel and the geometric-mean mixture; gravity oven-dry, fullness a share of the voids. */
export function stuffOf(gravity: number, fullness: number): Stuff {
  const voids = Math.max(0, 1 - gravity / wallGravity);
  const filled = fullness * voids;
  const dry = 0.1941 * gravity + 0.01864;
  const wall = 0.1941 * wallGravity + 0.01864;
  const most = dry + filled * (resin.k - air.k);
  const least = wall ** (1 - voids) * resin.k ** filled * air.k ** (voids - filled);
  return { k: (most + least) / 2, least, most, heat: 1000 * gravity * woodHeat + filled * resin.density * resin.heat };
}

/** A piece in metres; a side left out is endless. The grain runs along the length. */
export interface Piece {
  readonly thickness: number;
  readonly width: number | undefined;
  readonly length: number | undefined;
}

/** One slab for each finite direction: the widest face's depth first. */
export function block(piece: Piece, h: number, k: number, heat: number): Slab[] {
  const across = slab(piece.thickness / 2, h, k, heat);
  const width = piece.width ?? piece.thickness;
  const other = width === piece.thickness ? across : slab(width / 2, h, k, heat);
  const sides = [across, other];
  if (piece.length !== undefined) sides.push(slab(piece.length / 2, h, k * alongGrain, heat));
  return sides;
}

/** Share of the first temperature difference left at the core: the product of the directions (Incropera, 5.8). */
export const coreRatio = (sides: readonly Slab[], seconds: number): number =>
  sides.reduce((ratio, side) => ratio * remaining(side, seconds), 1);

/** Seconds until the core's share of the first difference has fallen to `target` (0 to 1). */
export function secondsTo(sides: readonly Slab[], target: number): number {
  if (target >= 1) return 0;
  // Once one term carries each series the logarithm falls on a straight line: a first guess.
  let rate = 0;
  let start = -Math.log(target);
  for (const side of sides) {
    remaining(side, 1 / side.pace);
    const { zeta, c } = side.terms[0];
    rate += side.pace * zeta ** 2;
    start += Math.log(c);
  }
  let low = 0;
  let high = start / rate;
  while (coreRatio(sides, high) > target) high *= 2;
  let at = start / rate;
  let step = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 100 && step > 1e-13 * high; i++) {
    const off = Math.log(coreRatio(sides, at) / target);
    if (off > 0) low = at;
    else high = at;
    const guess = at + off / rate;
    const next = guess > low && guess < high ? guess : (low + high) / 2;
    step = Math.abs(next - at);
    at = next;
  }
  return coreRatio(sides, at) <= target ? at : high;
}
