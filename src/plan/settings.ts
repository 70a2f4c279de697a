import { count, date, optional, quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";
import { choice } from "../../shared/words";
import { inTheOven } from "../cure/settings";
import { fromLabel } from "../resin/label";
import { daysOffArg } from "./daysoff";
import { hourArg } from "./hour";

const ovenSize = (side: string, inches: number) =>
  setting(`oven ${side}`, quantity("length", `${side} of an oven shelf`, inches, [1, 400]), inches, "measured in the shop");
export const ovenWidth = ovenSize("width", 12);
export const ovenDepth = ovenSize("depth", 10);
export const ovenShelves = setting("oven shelves", count("shelves in the oven", 2, [1, 100]), 2, "counted in the shop");
export const ovenSpacing = setting(
  "oven spacing",
  quantity("length", "clear space between pieces on a shelf", 0.5, [0, 10]),
  0.5,
  "from memory",
);

export const wrapMinutesPerPiece = setting(
  "wrap minutes per piece",
  quantity("minutes", "time to wrap one piece in foil", 1, [0, 120]),
  (shop) => (shop.get(inTheOven) === "foil" ? 60 : 0) as never,
  "from memory: 1 with foil, else 0",
);

export const vacuumHours = setting(
  "vacuum hours",
  quantity("hours", "hours under vacuum", 4, [0, 240]),
  4,
  "from memory: until the bubbling stops",
);

export const soakHours = setting(
  "soak hours",
  quantity("hours", "hours of soaking after the air is let in", 8, [0, 2400]),
  (shop) => (shop.get(vacuumHours) * 2) as never,
  `${fromLabel}: at least twice the vacuum hours`,
);

export const loadingMinutes = setting(
  "loading minutes",
  quantity("minutes", "time to load a tub, and again to unload it", 30, [0, 720]),
  30,
  "from memory",
);

export const opens = setting("opens", hourArg("the shop opens", 8), 8, "from memory: a value between 0 and 1 is a clock time");
export const closes = setting("closes", hourArg("the shop closes", 20), 20, "from memory: a value between 0 and 1 is a clock time");

export const daysOff = setting("days off", optional(daysOffArg), undefined, "the calendar");

export const order = setting("order", choice("order of the loads", ["best", "as typed"], "best"), "best", "the shop's choice");

export const foilAllowance = setting(
  "foil allowance",
  quantity("number", "foil used, as a multiple of the surface wrapped", 1.5, [1, 10]),
  1.5,
  "from memory",
);

export const readyBy = setting("ready by", optional(date("when everything must be done", "2026-03-14 17:00")), undefined, "the calendar");
