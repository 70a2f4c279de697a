import { quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";
import { choice } from "../../shared/words";
import { fromLabel } from "../resin/label";
import { type BakeBy, bakeEnds } from "./heating";

export const oven = setting("oven", quantity("temperature", "oven temperature", 200, [100, 300]), 200, fromLabel);

export const room = setting("room", quantity("temperature", "room temperature", 70, [0, 120]), 70, "the thermometer");

export const core = setting(
  "core",
  quantity("temperature", "core temperature to reach", 190, [90, 290]),
  190,
  "from memory: the label decides",
);

export const hold = setting("hold", quantity("minutes", "minutes at core temperature", 10, [0, 1440]), 0, "the label decides");

export const shortestBake = setting("shortest bake", quantity("minutes", "shortest bake", 30, [0, 1440]), 30, "common practice, no source");

export const thickest = setting(
  "thickest",
  quantity("length", "thickest piece baked by calculation", 2, [0.1, 12]),
  2,
  "a shop rule, not physics: the resin heats itself at any thickness, and more in a thick piece",
);

export const heatOfCure = setting(
  "heat of cure",
  quantity("heat", "heat that the resin gives off as it cures", 250, [0, 1000]),
  250,
  "from memory, an assumption for dimethacrylates; methyl methacrylate gives 523 (DSC, Makromol. Chem. 175, 1974, 70 °C); used by SELFHEAT alone",
);

export const bakeBy = setting(
  "bake by",
  choice<BakeBy>("which part of its likely range BAKE gives", bakeEnds, "middle"),
  "middle",
  "your choice: the long end makes sure, the short end is for a first check",
);

/** Surface coefficients of a 3/4 in to 2 in piece in still air, bare; wrapped or crowded; and with a fan: W/m²K. */
const coefficients = { foil: 8, spaced: 12, fan: 20 } as const;
type Way = keyof typeof coefficients;

export const inTheOven = setting(
  "in the oven",
  choice<Way>("how the pieces lie in the oven", ["foil", "spaced", "fan"], "foil"),
  "foil",
  "common practice, no source",
);

export const ovenSurfaceCoefficient = setting(
  "oven surface coefficient",
  quantity("coefficient", "heat that passes into a piece's surface", 8, [1, 500]),
  (shop) => coefficients[shop.get(inTheOven)] as never,
  "by “in the oven”: 8 foil-wrapped or crowded, 12 bare and spaced, 20 with a fan; computed by Churchill-Chu and Churchill-Bernstein (Incropera 9.34, 7.54) with radiation",
);
