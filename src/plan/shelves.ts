import { abreast } from "../chamber/abreast";
import type { Piece } from "../chamber/layers";

/** Lengths in meters. */
export interface Shelves {
  readonly ovenWidth: number;
  readonly ovenDepth: number;
  readonly ovenShelves: number;
  readonly ovenSpacing: number;
}

/** Pieces that lie on one shelf on their widest face, in rows, all turned the better of the two ways. */
export function onShelf({ thickness, width, length }: Piece, { ovenWidth, ovenDepth, ovenSpacing }: Shelves): number {
  const [, short, long] = [thickness, width, length].sort((a, b) => a - b);
  const rows = (across: number, deep: number) => abreast(ovenWidth, across, ovenSpacing) * abreast(ovenDepth, deep, ovenSpacing);
  return Math.max(rows(short, long), rows(long, short));
}
