import { quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";

export const cover = setting("cover", quantity("length", "fluid above the pieces", 1, [0, 100]), 1, "common practice, no source");

export const foamRoom = setting(
  "foam room",
  quantity("share", "share of the chamber's height left empty for foam", 1 / 3, [0, 0.95]),
  1 / 3,
  "from memory",
);

export const gap = setting("gap", quantity("length", "clearance around each piece in the chamber", 1 / 16, [0, 10]), 1 / 16, "from memory");

export const resinDensity = setting(
  "resin density",
  quantity("density", "density of the resin", 1.03, [0.5, 2.5]),
  1.03,
  "from memory: the label decides",
);

export const holdDown = setting(
  "hold-down",
  quantity("number", "ballast over what just balances", 1.5, [1, 10]),
  1.5,
  "common practice, no source",
);
