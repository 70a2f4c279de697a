import { badInput, noAnswer, said } from "../../shared/outcome";
import { type Clock, clockOf, day, dayOf, slack } from "./clock";
import { type DaysOff, noDaysOff } from "./daysoff";

/** The last moment a spreadsheet knows: the end of 31 December 9999; and the first that all of them agree on. */
export const lastDay = 2958466;
export const firstDay = 61;

const monday = 2;

/** A value between 0 and 1 is a clock time, anything else an hour. */
const secondsOf = (hour: number): number => (hour < 1 ? hour * day : hour * 3600);

interface Given {
  readonly opens: number;
  readonly closes: number;
  readonly daysOff: DaysOff | undefined;
  readonly loadingMinutes: number;
  readonly vacuumHours: number;
}

/** The first weekday from Monday on that is no day off: day 1 of a plan without dates. */
const firstWeekday = ({ weekdays }: DaysOff): number => {
  let weekday = monday;
  while (weekdays.has(weekday % 7)) weekday++;
  return weekday;
};

/** Open hours, refused where not one vacuum fits into them. */
export function openHours({ opens, closes, loadingMinutes, vacuumHours }: Given): { from: number; to: number; hours: number } {
  const [from, to] = [secondsOf(opens), secondsOf(closes)];
  if (to <= from) throw badInput`closes must be later than opens: type hours such as 8 and 20`;
  const attended = loadingMinutes + vacuumHours;
  if (attended > to - from + slack)
    throw noAnswer`loading and vacuum take ${said("hours", attended)}, and the shop is open for ${said("hours", to - from)}: never leave vacuum alone`;
  return { from, to, hours: to - from };
}

/** The clock of a plan whose day 0 is a serial; without one the days have no dates. */
export function clockFrom(given: Given, midnight: number | undefined): Clock {
  const { from, to } = openHours(given);
  const off = given.daysOff ?? noDaysOff;
  const { weekdays, dates } = off;
  if (midnight === undefined && dates.size)
    throw badInput`days off has a date, and the plan has none: give a start or “ready by”, or take the date out`;
  const first = midnight ?? firstWeekday(off);
  const isOff = (at: number) => weekdays.has((first + at) % 7) || (midnight !== undefined && dates.has(first + at));
  return clockOf(from, to, isOff);
}

/** Rounding to milliseconds removes the floating-point noise of a serial. */
export const timeOfDay = (serial: number): number => Math.round((serial - Math.floor(serial)) * day * 1000) / 1000;

/** A moment of a plan without dates, to the nearest minute. */
export function dayAndTime(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const at = dayOf(minutes * 60);
  const clock = [Math.floor((minutes - at * 1440) / 60), (minutes - at * 1440) % 60].map((part) => String(part).padStart(2, "0"));
  return `day ${at + 1} ${clock.join(":")}`;
}
