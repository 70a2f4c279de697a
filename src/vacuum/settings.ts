import { optional, quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";
import { heightAbove } from "./atmosphere";

export const altitude = setting("altitude", heightAbove("altitude of the shop"), 0, "the map");

export const barometer = setting(
  "barometer",
  optional(quantity("pressure", "air pressure as your barometer reads it, not corrected to sea level", 29.5, [6, 33])),
  undefined,
  "if given, it replaces the setting altitude",
);

export const pumpEndPressure = setting(
  "pump end pressure",
  quantity("pressure", "lowest absolute pressure the pump reaches", 0.1, [0.00001, 20]),
  0.1,
  "from memory: the pump's plate decides",
);

export const lidLimit = setting(
  "lid limit",
  // The working leaves the number out: a share of the allowed stress would read like a margin of safety.
  { ...quantity("share", "share of the design stress a lid may carry", 0.5, [0.01, 1]), say: () => "as set" },
  0.5,
  "from memory: ports, scratches and resin are not in the formula",
);
