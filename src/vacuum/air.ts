import { optional } from "../../shared/argument";
import { badInput, type Said, said } from "../../shared/outcome";
import { heightAbove, standardPressure, standardPressureTwin } from "./atmosphere";
import { altitude, barometer } from "./settings";

/** What is known of the air here: an altitude typed wins over the shop's barometer, and that over the shop's altitude. */
export interface Air {
  readonly altitude?: number;
  readonly here: number;
  readonly barometer?: number;
}

export const airArgs = { altitude: optional(heightAbove("altitude")) };
export const airSettings = { here: altitude, barometer };

export const airPressure = ({ altitude, here, barometer }: Air): number =>
  altitude === undefined ? (barometer ?? standardPressure(here)) : standardPressure(altitude);

/** The same for a sheet whose altitude and barometer are the shop's. */
export const airTwin = `IF({barometer}>0,{barometer},${standardPressureTwin("here")})`;

/** How far the air may be from what was worked out: weather about an altitude, a household barometer about itself (from memory). */
const weather = 0.03;
const dial = 0.003;

export function airRange(air: Air): readonly [least: number, most: number] {
  const off = air.altitude === undefined && air.barometer !== undefined ? dial : weather;
  return [airPressure(air) * (1 - off), airPressure(air) * (1 + off)];
}

export const airSource = "US Standard Atmosphere, 1976, at an altitude; or the barometer as it reads";

export const airDoubt = "weather moves the air pressure by about 3 % either way, which a barometer shows and an altitude cannot";

/** The air pressure, for the working. */
export const airStep = (air: Air): { readonly air: Said } => ({ air: said("pressure", airPressure(air)) });

/** The deepest a gauge can show with a pump that ends at a pressure. */
export function deepest(air: number, pumpEndPressure: number): number {
  if (pumpEndPressure >= air)
    throw badInput`pump end pressure must be below the air pressure here: ${said("pressure", pumpEndPressure)} is not below ${said("pressure", air)}`;
  return air - pumpEndPressure;
}
