import { badInput } from "../../shared/outcome";
import type { Arrangement } from "../chamber/load";
import { roomForResin } from "../resin/uptake";
import type { Size } from "./sizes";

/** One filling of the chamber. */
export interface Load {
  readonly size: Size;
  /** Labels of the rows it takes pieces from. */
  readonly labels: readonly string[];
  readonly count: number;
  /** Fluid that the wood takes up, each piece by its own gravity. */
  readonly uptake: number;
  /** How the chamber takes so many, by the lightest wood of the size. */
  readonly arrangement: Arrangement;
}

/** More would be neither read nor wanted, and would only keep the spreadsheet waiting. */
const mostPieces = 1e6;
const mostLoads = 1e5;

const piecesOf = (size: Size): number => size.rows.reduce((sum, { count }) => sum + count, 0);
const loadsOf = (size: Size): number => Math.ceil(piecesOf(size) / size.perLoad);

export function refuseEndless(sizes: readonly Size[]): void {
  const pieces = sizes.reduce((sum, size) => sum + piecesOf(size), 0);
  if (pieces > mostPieces) throw badInput`${pieces} pieces are more than a plan takes, ${mostPieces}: plan fewer at a time`;
  const loads = sizes.reduce((sum, size) => sum + loadsOf(size), 0);
  if (loads > mostLoads) throw badInput`${loads} loads are more than a plan takes, ${mostLoads}: plan fewer pieces at a time`;
}

/** As few loads as it takes, balanced, the larger first; pieces go in as their rows come. */
export function balanced(size: Size, fullness: number): Load[] {
  const pieces = piecesOf(size);
  const loads = loadsOf(size);
  const volume = size.piece.thickness * size.piece.width * size.piece.length;
  const arrangements = new Map<number, Arrangement>();
  const arrange = (count: number): Arrangement => {
    const known = arrangements.get(count) ?? size.load.arrange(count);
    arrangements.set(count, known);
    return known;
  };
  let row = 0;
  let used = 0;
  return Array.from({ length: loads }, (_, i) => {
    const count = Math.floor(pieces / loads) + (i < pieces % loads ? 1 : 0);
    const labels = new Set<string>();
    let uptake = 0;
    for (let missing = count; missing > 0; ) {
      const { label, gravity, count: has } = size.rows[row];
      const taken = Math.min(missing, has - used);
      labels.add(label);
      uptake += taken * roomForResin(volume, gravity, 0) * fullness;
      missing -= taken;
      used += taken;
      if (used === has) [row, used] = [row + 1, 0];
    }
    return { size, labels: [...labels], count, uptake, arrangement: arrange(count) };
  });
}
