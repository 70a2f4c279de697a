/** Least pressure of the saturation line, at 0 °C: under it water boils at any temperature above freezing. */
export const leastSaturation = 611.213;

// Coefficients n1 to n10: IAPWS-IF97 (R7-97, 2012), table 34.
const [n1, n2, n3, n4, n5] = [0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7];
const [n6, n7, n8, n9, n10] = [0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3];

/**
 * Temperature in °C at which water boils under an absolute pressure in Pa, from 611.213 Pa to the critical point.
 * Reference: IAPWS-IF97 (R7-97, 2012), region 4, the saturation-temperature equation, eqs. 31, 29b.
 */
export function boilingPoint(p: number): number {
  const beta = (p / 1e6) ** 0.25;
  const E = beta ** 2 + n3 * beta + n6;
  const F = n1 * beta ** 2 + n4 * beta + n7;
  const G = n2 * beta ** 2 + n5 * beta + n8;
  const D = (2 * G) / (-F - Math.sqrt(F ** 2 - 4 * E * G));
  return (n10 + D - Math.sqrt((n10 + D) ** 2 - 4 * (n9 + n10 * D))) / 2 - 273.15;
}
