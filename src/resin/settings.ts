import { date, optional, quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";

export const fullness = setting(
  "fullness",
  quantity("share", "how full the pores get", 0.6, [0, 1.05]),
  0.6,
  "from memory: calibrate with FULLNESS; sound maple is nearer 0.4",
);

export const fullnessSpread = setting(
  "fullness spread",
  quantity("share", "how far the fullness of a run may be off, either way", 0.45, [0, 1]),
  0.45,
  "from memory: × 0.55 to × 1.45; your own Run Log gives a wood's own once it has three weighings",
);

export const drips = setting("drips", quantity("film", "fluid lost on surfaces, as a film", 0.1, [0, 10]), 0.1, "from memory");

export const dyeRate = setting(
  "dye rate",
  quantity("strength", "dye powder to a measure of fluid", 0.25, [0, 96]),
  0.25,
  "common practice, no source",
);

export const packetMakes = setting(
  "packet makes",
  quantity("fluid", "fluid that one packet of catalyst makes", 1, [0.001, 1000]),
  1,
  "common practice, no source",
);

const months = (what: string, many: number) => quantity("months", `months ${what} resin keeps`, many, [0, 1200]);
export const catalyzedMonths = setting("catalyzed months", months("catalyzed", 3), 3, "common practice, no source", "catalysed months");
export const unmixedMonths = setting("unmixed months", months("unmixed", 36), 36, "common practice, no source");

export const resinOnHand = setting(
  "resin on hand",
  quantity("fluid", "mixed fluid left from last time", 1, [0, 1e6]),
  0,
  "measured in the shop",
);

export const resinDyeRate = setting(
  "resin dye rate",
  quantity("strength", "dye rate of the resin on hand", 0.25, [0, 96]),
  (shop) => shop.get(dyeRate),
  "the dye rate, unless another is known",
);

export const resinMixedOn = setting(
  "resin mixed on",
  optional(date("day the oldest part of the resin on hand was mixed", "2026-03-14")),
  undefined,
  "the label on the tub",
);
