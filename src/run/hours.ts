import type { DaysOff } from "../plan/daysoff";

/** The shop's open hours; moments in milliseconds since 1970, local time `offset` minutes ahead of UTC. */
export interface Hours {
  readonly opens: number;
  readonly closes: number;
  readonly offset: number;
  /** Days off. */
  readonly daysOff?: DaysOff;
}

export const minute = 60_000;
export const hour = 60 * minute;
const day = 24 * hour;

/** How many days ahead an open day is looked for. */
const furthest = 366;

/** The first moment at or after `moment` with `lasting` ms left in the open hours of its day; `moment` itself where no day is long enough. */
export function openFrom(moment: number, lasting: number, hours: Hours): number {
  const { opens, closes, offset } = hours;
  if (lasting > (closes - opens) * hour) return moment;
  const local = moment + offset * minute;
  const today = Math.floor(local / day) * day;
  for (let days = 0; days < furthest; days++) {
    const midnight = today + days * day;
    const from = Math.max(local, midnight + opens * hour);
    if (from + lasting <= midnight + closes * hour && !isOff(from - offset * minute, hours)) return from - offset * minute;
  }
  return moment;
}

/** Whether the day of a moment is a day off. */
export function isOff(moment: number, { offset, daysOff }: Hours): boolean {
  const serial = Math.floor(serialOf(moment, offset));
  return daysOff !== undefined && (daysOff.weekdays.has(serial % 7) || daysOff.dates.has(serial));
}

/** Closing time of the day of a moment. */
export function closingOf(moment: number, { closes, offset }: Hours): number {
  const local = moment + offset * minute;
  return Math.floor(local / day) * day + closes * hour - offset * minute;
}

/** The opening time of that day. */
export const openingOf = (moment: number, hours: Hours): number => closingOf(moment, hours) - (hours.closes - hours.opens) * hour;

const dayZero = Date.UTC(1899, 11, 30);

/** A moment as spreadsheets count days, in local time; and back. */
export const serialOf = (moment: number, offset: number): number => (moment + offset * minute - dayZero) / day;
export const momentOf = (serial: number, offset: number): number => Math.round(serial * 86_400) * 1000 + dayZero - offset * minute;
