/** What a load displaces and takes up, and how high it stands. */
export interface Wet {
  readonly area: number;
  readonly stack: number;
  /** Pieces and ballast. */
  readonly solids: number;
  readonly uptake: number;
}

/** Resin that covers the pieces while the vacuum is on: A (stack + cover) − solids. */
export const toCover = ({ area, stack, solids }: Omit<Wet, "uptake">, cover: number): number =>
  Math.max(0, area * (stack + cover) - solids);

/** The least resin for a load, m³: the least cover is left when the wood has taken its fill. */
export const needOf = (wet: Wet, leastCover: number): number => toCover(wet, leastCover) + wet.uptake;
