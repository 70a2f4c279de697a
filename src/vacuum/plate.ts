/** A flat round plate that lies on its rim under an even load: simply supported. */
export interface Plate {
  /** Radius inside the support, m. */
  readonly a: number;
  readonly t: number;
  /** Young's modulus, Pa, and Poisson's ratio. */
  readonly E: number;
  readonly nu: number;
}

// Reference: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, ch. 3; Roark, table 11.2, case 10a (numbers from memory).
// A lid on a gasket is never clamped: the clamped formulas would understate stress by two fifths.

/** Largest stress in Pa, in the middle of the far face: 3 (3 + ν)/8 p (a/t)². */
export const stress = ({ a, t, nu }: Plate, p: number): number => ((3 * (3 + nu)) / 8) * p * (a / t) ** 2;

/** Deflection of the middle, m: (5 + ν) p a⁴ / (64 (1 + ν) D), D = E t³ / 12 (1 − ν²). */
export function deflection({ a, t, E, nu }: Plate, p: number): number {
  const D = (E * t ** 3) / (12 * (1 - nu ** 2));
  return ((5 + nu) * p * a ** 4) / (64 * (1 + nu) * D);
}

/** What a plate is made of, and texts in built-in spreadsheet syntax for the rest. */
type Written = Pick<Plate, "E" | "nu"> & { readonly a: string; readonly t: string };

/** The same two in built-in spreadsheet syntax. */
export const stressTwin = ({ a, t, nu }: Written, p: string): string => `${(3 * (3 + nu)) / 8}*${p}*(${a}/${t})^2`;
export const deflectionTwin = ({ a, t, E, nu }: Written, p: string): string =>
  `${deflection({ a: 1, t: 1, E, nu }, 1)}*${p}*${a}^4/${t}^3`.replace("e", "E");
