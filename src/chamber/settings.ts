import { count, optional, quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";
import { tubArg } from "./section";

export const cover = setting("cover", quantity("length", "resin above the pieces", 1, [0, 100]), 1, "common practice, no source");

export const leastCover = setting(
  "least cover",
  quantity("length", "resin above the pieces that is still enough", 0.5, [0, 100]),
  0.5,
  "from memory",
);

export const foamRoom = setting(
  "foam room",
  quantity("share", "share of the tub's height left empty for foam", 1 / 3, [0, 0.95]),
  1 / 3,
  "from memory",
);

export const gap = setting("gap", quantity("length", "clearance around each piece in the chamber", 1 / 16, [0, 10]), 1 / 16, "from memory");

export const holdDown = setting(
  "hold-down",
  quantity("number", "ballast as a multiple of what just balances", 1.5, [1, 10]),
  1.5,
  "common practice, no source",
);

export const tub = setting("tub", optional(tubArg), undefined, "measured; blank: the chamber itself");

export const tubHeight = setting(
  "tub height",
  optional(quantity("length", "inside height of the tub", 8, [0.1, 200])),
  undefined,
  "measured; blank: the chamber's",
);

export const tubWall = setting("tub wall", quantity("length", "thickness of the tub's wall", 1 / 8, [0, 10]), 1 / 8, "from memory");

export const tubs = setting(
  "tubs",
  optional(count("number of tubs or jars you have", 3, [1, 100])),
  undefined,
  "counted; blank: as many as fit in the chamber at once",
);
