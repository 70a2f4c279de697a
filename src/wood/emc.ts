import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";

// Quadratics in °C of Wood Handbook, FPL-GTR-282 (2021), eq. 4-5. Copies of the °F form with K1 ending in −4.53e-5 are misprinted.
const W = [349, 1.29, 0.0135] as const;
const K = [0.805, 0.000736, -0.00000273] as const;
const K1 = [6.27, -0.00938, -0.000303] as const;
const K2 = [1.91, 0.0407, -0.000293] as const;

const at = ([c, b, a]: readonly [number, number, number], T: number): number => c + b * T + a * T ** 2;
const twinAt = ([c, b, a]: readonly [number, number, number]): string => `(${c}+(${b})*{temperature}+(${a.toFixed(8)})*{temperature}^2)`;

/** Moisture in percent that wood comes to in air of T °C and a relative humidity h, a share. */
function equilibrium(T: number, h: number): number {
  const Kh = at(K, T) * h;
  const K1Kh = at(K1, T) * Kh;
  const K1K2 = K1Kh * at(K2, T) * Kh;
  return (1800 / at(W, T)) * (Kh / (1 - Kh) + (K1Kh + 2 * K1K2) / (1 + K1Kh + K1K2));
}

const [w, k, k1, k2] = [W, K, K1, K2].map(twinAt);
const kh = `${k}*{humidity}`;
const twin = `18/${w}*(${kh}/(1-${kh})+(${k1}*${kh}+2*${k1}*${k2}*(${kh})^2)/(1+${k1}*${kh}+${k1}*${k2}*(${kh})^2))`;

/** Species differ from the one that the equation was fitted to by up to this much (moisture, a share). */
const doubt = 0.02;

/** Moisture that wood takes from the air of the shop. */
export const emc = define({
  name: "EMC",
  per: "piece",
  asks: "What moisture will wood reach in this air?",
  args: {
    temperature: quantity("temperature", "temperature of the air", 70, [30, 270]),
    humidity: quantity("share", "relative humidity", 0.5, [0, 1]),
  },
  shop: {},
  returns: cell(quantity("share", "equilibrium moisture content", 0.0924)),
  format: "0.0%",
  equation:
    "1800/W × (K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²)) percent, h = {humidity}; W, K, K1, K2 quadratics in {temperature}",
  source: "Wood Handbook, FPL-GTR-282 (2021), eq. 4-5, °C form, and Table 4-2; coefficients read in a public copy",
  accuracy:
    "fitted to Sitka spruce; other woods lie within 1 or 2 % moisture of it. Table 4-2 covers 30 to 270 °F and 5 to 95 % humidity; its °F form differs by up to 0.06 % moisture",
  cautions: [],
  worked: { typed: [70, 0.5], gives: 0.09242287422570968 },
  twin,
  trust: ({ temperature, humidity }) => {
    const share = equilibrium(temperature, humidity) / 100;
    return [Math.max(0, share - doubt), share + doubt];
  },
  run: ({ temperature, humidity }) => as(equilibrium(temperature, humidity) / 100),
});
