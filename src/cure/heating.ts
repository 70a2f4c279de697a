import { badInput, noAnswer, said } from "../../shared/outcome";
import { middlingGravity } from "../wood/voids";
import { block, type Sides, secondsTo } from "./block";
import { type Filled, filledWood, liquid, type Resin } from "./filled";
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
  /** Which end of the likely range is answered. */
  readonly bakeBy?: BakeBy;
}

export const bakeEnds = ["middle", "short end", "long end"] as const;
export type BakeBy = (typeof bakeEnds)[number];

/** The uncertainty of the inputs, for the likely range of every answer. */
export interface Doubt {
  readonly k: keyof Filled;
  /** Factor on the surface coefficient. */
  readonly h: number;
  /** Kelvin by which the oven is cooler than its dial. */
  readonly cooler: number;
}
const asStated: Doubt = { k: "k", h: 1, cooler: 0 };
export const atBest: Doubt = { k: "most", h: 3 / 2, cooler: 0 };
export const atWorst: Doubt = { k: "least", h: 2 / 3, cooler: (5 * 5) / 9 };

/** The piece as slabs that cross in air that passes h to its surface. */
export function slabsOf(wood: Wood, h: number, doubt: Doubt = asStated, resin: Resin = liquid): Slab[] {
  const filled = filledWood(wood.gravity ?? middlingGravity, wood.fullness, resin);
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

const doubts: Readonly<Record<BakeBy, Doubt>> = { middle: asStated, "short end": atBest, "long end": atWorst };

/** Whether an oven that runs cooler than its dial may never bring the core up to temperature: the likely range then has no end. */
const isEndless = ({ oven, core }: Pick<Oven & Bake, "oven" | "core">): boolean => core >= oven - atWorst.cooler;

/** Seconds in the oven: heating and hold, not under the shortest bake. */
export function baking(wood: Wood, oven: Oven & Bake, doubt: Doubt = doubts[oven.bakeBy ?? "middle"]): number {
  if (doubt === atWorst && oven.core < oven.oven && isEndless(oven))
    throw noAnswer`there is no long end: in an oven ${said("rise", atWorst.cooler)} cooler than set, the core never reaches ${said("temperature", oven.core)}`;
  return Math.max(heating(wood, oven, doubt) + oven.hold, oven.shortestBake);
}

/** The likely range of a bake, in seconds. */
export const likelyBake = (wood: Wood, oven: Oven & Bake): readonly [least: number, most: number | undefined] => [
  baking(wood, oven, atBest),
  isEndless(oven) ? undefined : baking(wood, oven, atWorst),
];

/** Temperature where `share` of the first difference to the bath is left. */
export const temperatureAt = (bath: number, first: number, share: number): number => bath - (bath - first) * share;
