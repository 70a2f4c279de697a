import { quantity } from "../../shared/argument";

/** An altitude inside the lowest layer of the standard atmosphere, which ends at 11 km, about 36,150 ft. */
export const heightAbove = (label: string) => quantity("altitude", label, 2000, [-1500, 36000]);

// US Standard Atmosphere, 1976, table 2 and section 1.2: its own constants, some of them since refined.
/** Pressure at sea level, Pa. */
export const seaLevel = 101325;
const T0 = 288.15;
/** Fall of temperature in the lowest layer, K per geopotential meter. */
const L = 0.0065;
const g0 = 9.80665;
const M0 = 28.9644;
const R = 8314.32;
/** Radius of the Earth at which gravity is g0. */
const r0 = 6356766;

const power = (g0 * M0) / (R * L);

/**
 * Pressure at a geometric altitude Z: P = P0 (1 − L H / T0) ^ (g0 M0 / R L), with the geopotential altitude H = r0 Z / (r0 + Z).
 * Reference: US Standard Atmosphere, 1976, eqs. 18 and 33a (numbers from memory).
 */
export const standardPressure = (Z: number): number => seaLevel * (1 - (L * ((r0 * Z) / (r0 + Z))) / T0) ** power;

/** The same in built-in spreadsheet syntax, of a name that stands for meters. */
export const standardPressureTwin = (Z: string): string => `${seaLevel}*(1-${L}*(${r0}*{${Z}}/(${r0}+{${Z}}))/${T0})^${power}`;
