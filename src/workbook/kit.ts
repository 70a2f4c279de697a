import { shopReader } from "../../shared/settings";
import { fromInternal, plainUnits, type Scale, toInternal, type Units } from "../../shared/unit";
import type { Kind, System } from "../../shared/unittable";
import { settings } from "../shop";

/** What the sheets of one book have in common. */
export interface Kit {
  readonly system: System;
  readonly units: Units;
  /** With the invented shop's data, or empty. */
  readonly demo: boolean;
  /** What is written one way in US units and another in SI, such as the places of a number. */
  readonly by: <T>(us: T, si: T) => T;
  /** The unit of a plain number of a kind, by the book's system. */
  readonly unit: (kind: Kind) => string;
  /** A quantity of the demo, told in US units, as that shop would read it off: to `digits` places under SI. */
  readonly of: (kind: Kind, us: number, digits?: number) => number;
}

/** The demo shop measures in the book's system and weighs in grams either way. */
export const scale: Scale = "g";

export function kitOf(system: System, demo: boolean): Kit {
  const units = plainUnits(system, scale);
  const us = plainUnits("US", scale);
  return {
    system,
    units,
    demo,
    by: (us, si) => (system === "US" ? us : si),
    unit: (kind) => units[kind].name,
    of: (kind, value, digits = 0) =>
      system === "US" ? value : Number(fromInternal(toInternal(value, us[kind]), units[kind]).toFixed(digits)),
  };
}

/** The defaults of settings. */
export const readShop = shopReader(settings);
