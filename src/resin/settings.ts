import { date, optional, quantity } from "../../shared/argument";
import type { Quantity } from "../../shared/quantity";
import { setting } from "../../shared/settings";
import { fromLabel } from "./label";

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

export const drips = setting("drips", quantity("film", "resin lost on surfaces, as a film", 0.1, [0, 10]), 0.1, "from memory");

export const dyeRate = setting("dye rate", quantity("strength", "dye powder for each measure of resin", 0.25, [0, 96]), 0.25, fromLabel);

export const packetMakes = setting(
  "packet makes",
  quantity("fluid", "resin that one packet of catalyst makes", 1, [0.001, 1000]),
  1,
  fromLabel,
);

const months = (what: string, many: number) => quantity("months", `months ${what} resin keeps`, many, [0, 1200]);
export const catalyzedMonths = setting("catalyzed months", months("catalyzed", 3), 3, fromLabel, "catalysed months");
export const unmixedMonths = setting("unmixed months", months("unmixed", 36), 36, fromLabel);

export const resinOnHand = setting(
  "resin on hand",
  quantity("fluid", "mixed resin left from last time", 1, [0, 100]),
  0,
  "measured in the shop",
);

/** The dye rate of resin already mixed cannot be told from today's setting: where that was changed, the old rate must be typed. */
export const resinDyeRate = setting<Quantity<"strength"> | undefined>(
  "resin dye rate",
  optional(quantity("strength", "what the resin on hand was dyed at", 0.25, [0, 96])),
  (shop) => {
    const rate = shop.get(dyeRate);
    const changed = Math.abs(rate - dyeRate.fallback(shop)) > 1e-9 * rate;
    return changed && shop.get(resinOnHand) > 0 ? undefined : rate;
  },
  "read off the tub; blank: the dye rate, while that is still its default",
);

export const resinMixedOn = setting(
  "resin mixed on",
  optional(date("day the oldest part of the resin on hand was mixed", "2026-03-14")),
  undefined,
  "the label on the tub",
);

export const mostResin = setting(
  "most resin",
  optional(quantity("fluid", "most mixed resin of one color in tubs at once", 4, [0.01, 1000])),
  undefined,
  "how much resin you want to tie up; blank: no limit",
);

export const resinDensity = setting(
  "resin density",
  quantity("density", "density of the resin", 1.03, [0.5, 2.5]),
  1.03,
  "from memory: the label decides",
);
