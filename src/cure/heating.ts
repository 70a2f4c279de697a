import { badInput, said } from "../../shared/outcome";
import { middlingGravity } from "../wood/voids";
import { block, type Sides, secondsTo } from "./block";
import { type Filled, filledWood } from "./filled";
import type { Slab } from "./slab";

/** The piece and what its pores hold. */
export interface Wood extends Sides {
  readonly gravity?: number;
  readonly fullness: number;
}

export interface Oven {
  readonly oven: number;
  readonly room: number;
  readonly ovenSurfaceCoefficient: number;
}

export interface Bake {
  readonly core: number;
  readonly hold: number;
  readonly shortestBake: number;
}

/** How much better, worse or cooler things may really be: the honest range of every answer. */
interface Doubt {
  readonly k: keyof Filled;
  /** Times the surface coefficient. */
  readonly h: number;
  /** Degrees Celsius that the oven lies under its dial. */
  readonly cooler: number;
}
const asStated: Doubt = { k: "k", h: 1, cooler: 0 };
export const atBest: Doubt = { k: "most", h: 3 / 2, cooler: 0 };
export const atWorst: Doubt = { k: "least", h: 2 / 3, cooler: (5 * 5) / 9 };

/** The piece as slabs that cross in air that passes h to its surface. */
export function slabsOf(wood: Wood, h: number, doubt: Doubt = asStated): Slab[] {
  const filled = filledWood(wood.gravity ?? middlingGravity, wood.fullness);
  return block(wood, h * doubt.h, filled[doubt.k], filled.heat);
}

/** The share of the oven's lead over the room that is left when the core is up to temperature. */
export function coreTarget(oven: number, room: number, core: number): number {
  if (core >= oven)
    throw badInput`core must be cooler than the oven: ${said("temperature", core)} is not below ${said("temperature", oven)}`;
  if (room >= core)
    throw badInput`room must be cooler than the core: ${said("temperature", room)} is not below ${said("temperature", core)}`;
  return (oven - core) / (oven - room);
}

/** Seconds until the core is up to temperature, by conduction alone. */
export function heating(wood: Wood, { oven, room, core, ovenSurfaceCoefficient }: Oven & Bake, doubt: Doubt = asStated): number {
  const target = coreTarget(oven - doubt.cooler, room, core);
  return secondsTo(slabsOf(wood, ovenSurfaceCoefficient, doubt), target);
}

/** Seconds in the oven: heating and hold, not under the shortest bake. */
export const baking = (wood: Wood, oven: Oven & Bake, doubt: Doubt = asStated): number =>
  Math.max(heating(wood, oven, doubt) + oven.hold, oven.shortestBake);

/** Temperature where `share` of the first difference to the bath is left. */
export const temperatureAt = (bath: number, first: number, share: number): number => bath - (bath - first) * share;
