/** Seconds in a day. */
export const day = 86_400;
/** Moments that differ by less are one: a billionth of a day. */
export const slack = 1e-9 * day;

/** The hours between which somebody is there, every day the same. Moments are seconds from the midnight before the first day. */
export interface Clock {
  readonly opens: number;
  readonly hours: number;
  /** The first moment at or after `from` whose next `lasting` seconds lie in one day's open hours; not longer than these. */
  first(from: number, lasting: number): number;
  /** Open seconds from one moment to a later one. */
  between(from: number, to: number): number;
  /** The moment at which so many open seconds, more than none, have gone by. */
  after(from: number, open: number): number;
}

export function clockOf(opens: number, closes: number): Clock {
  const hours = closes - opens;
  const dayOf = (moment: number) => Math.floor(moment / day + 1e-9);
  /** Open seconds since the first midnight. */
  const gone = (moment: number) => {
    const days = dayOf(moment);
    return days * hours + Math.min(hours, Math.max(0, moment - days * day - opens));
  };
  return {
    opens,
    hours,
    first: (from, lasting) => {
      const midnight = dayOf(from) * day;
      const at = Math.max(from, midnight + opens);
      return at + lasting <= midnight + closes + slack ? at : midnight + day + opens;
    },
    between: (from, to) => gone(to) - gone(from),
    after: (from, open) => {
      const total = gone(from) + open;
      const days = Math.ceil(total / hours - 1e-9) - 1;
      return days * day + opens + (total - days * hours);
    },
  };
}
