import type { Kit } from "../kit";

/** The day of the invented shop's demo, a serial: Saturday, 14 March 2026, and the hour it begins. */
export const demoDay = 46095;
export const demoStart = demoDay + 14 / 24;

export const moment = "yyyy-mm-dd hh:mm";
export const day = "yyyy-mm-dd";

/** For narrow columns: US dates with two digits of the year. */
export const briefDay = (kit: Kit): string => kit.by("yy-mm-dd", day);
