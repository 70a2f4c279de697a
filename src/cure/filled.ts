import { wallGravity } from "../wood/voids";

/** Cast acrylic in place of the cured resin: W/mK, kg/m³, J/kgK, from suppliers' data. */
const resin = { k: 0.19, density: 1190, heat: 1470 };
const air = { k: 0.026 };

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

/**
 * Wood whose pores are partly full of cured resin. Nobody has measured it: one bound lays the resin beside the wood, the
 * other is the geometric mean of wall, resin and air, and the middle of the two is used. In dense, full wood they cross.
 */
export function filledWood(gravity: number, fullness: number): Filled {
  const voids = Math.max(0, 1 - gravity / wallGravity);
  const filled = fullness * voids;
  const beside = dryWood(gravity) + filled * (resin.k - air.k);
  const mixed = dryWood(wallGravity) ** (1 - voids) * resin.k ** filled * air.k ** (voids - filled);
  return {
    k: (beside + mixed) / 2,
    least: Math.min(beside, mixed),
    most: Math.max(beside, mixed),
    heat: 1000 * gravity * woodHeat + filled * resin.density * resin.heat,
  };
}
