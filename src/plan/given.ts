import { date, optional, type Values } from "../../shared/argument";
import { bathSettings } from "../chamber/arrange";
import { heightArg } from "../chamber/headroom";
import { chamberArg } from "../chamber/section";
import { tub, tubHeight, tubs, tubWall } from "../chamber/settings";
import { bakeSettings } from "../cure/bake";
import { inTheOven } from "../cure/settings";
import { catalyzedMonths, drips, dyeRate, mostResin, packetMakes, resinDyeRate, resinMixedOn, resinOnHand } from "../resin/settings";
import { piecesArg } from "./pieces";
import { resinsArg } from "./resins";
import {
  closes,
  daysOff,
  foilAllowance,
  loadingMinutes,
  opens,
  order,
  ovenDepth,
  ovenShelves,
  ovenSpacing,
  ovenWidth,
  readyBy,
  soakHours,
  vacuumHours,
  wrapMinutesPerPiece,
} from "./settings";

/** What PLAN and SHOPPINGLIST are asked. */
export const planArgs = {
  pieces: piecesArg,
  chamber: chamberArg,
  height: heightArg,
  start: optional(date("start", "2026-03-14 08:00")),
  resins: optional(resinsArg),
};

/** All of the shop that a plan depends on. */
export const planShop = {
  ...bathSettings,
  ...bakeSettings,
  inTheOven,
  ...{ tub, tubHeight, tubWall, tubs, mostResin },
  ...{ drips, dyeRate, packetMakes, catalyzedMonths, resinOnHand, resinDyeRate, resinMixedOn },
  ...{ ovenWidth, ovenDepth, ovenShelves, ovenSpacing, wrapMinutesPerPiece, foilAllowance },
  ...{ vacuumHours, soakHours, loadingMinutes, opens, closes, daysOff, order, readyBy },
};

export type Given = Values<typeof planArgs> & Values<typeof planShop>;
