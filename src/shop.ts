import { type Setting, setting } from "../shared/settings";
import { scaleNames } from "../shared/unit";
import { choice } from "../shared/words";
import * as chamber from "./chamber/settings";
import * as cure from "./cure/settings";
import * as plan from "./plan/settings";
import * as resin from "./resin/settings";
import * as vacuum from "./vacuum/settings";
import * as wood from "./wood/settings";

const units = setting("units", choice("units of plain numbers", ["US", "SI"], "US"), "US", "US or SI");
const scaleReads = setting(
  "scale reads",
  choice("unit of every plain weight", scaleNames, "g"),
  (shop) => shop.units.weight.name as never,
  "many measure inches and weigh grams",
);

/** Every setting of the shop range, by subject. */
export const settingsBySubject: Readonly<Record<string, readonly Setting[]>> = {
  shop: [units, scaleReads],
  wood: Object.values(wood),
  chamber: Object.values(chamber),
  vacuum: Object.values(vacuum),
  resin: Object.values(resin),
  cure: Object.values(cure),
  plan: Object.values(plan),
};

export const settings: readonly Setting[] = Object.values(settingsBySubject).flat();
