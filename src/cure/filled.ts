import { wallGravity } from "../wood/voids";

/** Heat conductivities, W/mK: cast acrylic in place of the resin (suppliers' data), and air. */
const k = { resin: 0.19, air: 0.026 };

/** What it takes to warm the resin in the pores: kg/m³, J/kgK. */
export interface Resin {
  readonly density: number;
  readonly heat: number;
  /** What it is made of, and where its numbers come from. */
  readonly basis: string;
}

/** As it goes into the oven. */
export const liquid: Resin = { density: 1030, heat: 2000, basis: "liquid resin, from memory" };
/** As it comes out. */
export const cured: Resin = { density: 1190, heat: 1470, basis: "cured resin as cast acrylic, suppliers' data" };

/** J/kgK of dry wood at 330 K: 0.1031 + 0.003867 T, Wood Handbook ch. 4. */
const woodHeat = 1379;

/** Dry wood across the grain, W/mK: Wood Handbook, FPL-GTR-282 (2021), eq. 4-17 at no moisture. */
const dryWood = (gravity: number): number => 0.1941 * gravity + 0.01864;

/** Conductivity across the grain, W/mK, with the bounds between which it must lie, and heat to warm a volume, J/m³K. */
export interface Filled {
  readonly k: number;
  readonly least: number;
  readonly most: number;
  readonly heat: number;
}

/** Share of a piece's volume that resin fills. */
export const filledShare = (gravity: number, fullness: number): number => fullness * Math.max(0, 1 - gravity / wallGravity);

/**
 * Wood whose pores are partly full of resin. Nobody has measured it: one bound lays the resin beside the wood, the
 * other is the geometric mean of wall, resin and air, and the middle of the two is used. In dense, full wood they cross.
 */
export function filledWood(gravity: number, fullness: number, { density, heat }: Resin = liquid): Filled {
  const voids = Math.max(0, 1 - gravity / wallGravity);
  const filled = filledShare(gravity, fullness);
  const beside = dryWood(gravity) + filled * (k.resin - k.air);
  const mixed = dryWood(wallGravity) ** (1 - voids) * k.resin ** filled * k.air ** (voids - filled);
  return {
    k: (beside + mixed) / 2,
    least: Math.min(beside, mixed),
    most: Math.max(beside, mixed),
    heat: 1000 * gravity * woodHeat + filled * density * heat,
  };
}
