import { floorOf } from "../chamber/floor";
import { type Bath, heightForPieces } from "../chamber/load";
import { needOf } from "../chamber/need";
import type { Room, Shape } from "../chamber/stratum";
import type { Part } from "./parts";
import type { Tub } from "./tub";

/** What the packing of one color is given. */
export interface Packing {
  readonly shapes: readonly Shape[];
  readonly parts: readonly Part[];
  readonly tub: Tub;
  readonly bath: Bath;
  /** Most pieces that one person wraps in a day. */
  readonly mostPieces: number;
  /** Most resin that one load may need. */
  readonly mostResin: number;
  /** Pieces times sizes of all colors together: the time that packing takes grows with it. */
  readonly work: number;
}

/** The least volume that a piece of each size displaces and takes up, m³. */
function leastNet(shapes: readonly Shape[], parts: readonly Part[]): Float64Array {
  const net = new Float64Array(shapes.length).fill(Number.POSITIVE_INFINITY);
  for (const { size, solids, uptake } of parts) net[size] = Math.min(net[size], solids - uptake);
  return net;
}

export function roomOf({ shapes, parts, tub, bath, mostResin }: Packing): Room {
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
