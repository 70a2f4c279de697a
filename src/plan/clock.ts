import { badInput } from "../../shared/outcome";

/** Seconds in a day. */
export const day = 86_400;
/** Moments that differ by less are one: a billionth of a day. */
export const slack = 1e-9 * day;

/** The shop's open hours. Moments are seconds from the midnight before the first day. */
export interface Clock {
  readonly opens: number;
  readonly hours: number;
  /** The first moment at or after `from` whose next `lasting` seconds lie in one day's open hours; not longer than these. */
  first(from: number, lasting: number): number;
  /** The first opening after a moment. */
  nextOpening(after: number): number;
  /** Closing time of the day of a moment; −∞ on a day off and before opening. */
  closing(at: number): number;
}

/** Longest run of days off that the search for an open day passes over. */
const longestBreak = 4000;

export const dayOf = (moment: number): number => Math.floor(moment / day + 1e-9);

/** `isOff` takes the number of a day; the first is 0. */
export function clockOf(opens: number, closes: number, isOff: (day: number) => boolean = () => false): Clock {
  const openDay = (from: number): number => {
    for (let at = from; at < from + longestBreak; at++) if (!isOff(at)) return at;
    throw badInput`days off leave no day to work on: take some out`;
  };
  return {
    opens,
    hours: closes - opens,
    first: (from, lasting) => {
      const today = dayOf(from);
      const open = openDay(today);
      const at = open === today ? Math.max(from, today * day + opens) : open * day + opens;
      return at + lasting <= open * day + closes + slack ? at : openDay(open + 1) * day + opens;
    },
    nextOpening: (after) => {
      const today = dayOf(after);
      const start = today * day + opens > after + slack ? today : today + 1;
      return openDay(start) * day + opens;
    },
    closing: (at) => {
      const today = dayOf(at);
      return isOff(today) || at < today * day + opens - slack ? Number.NEGATIVE_INFINITY : today * day + closes;
    },
  };
}
