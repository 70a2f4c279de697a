import type { Arg } from "../../shared/argument";
import { shown } from "../../shared/argument";
import { badInput, handedOn, isFault } from "../../shared/outcome";
import { readDate } from "../../shared/serial";

/** Days off. */
export interface DaysOff {
  /** A serial's remainder by 7: Saturday is 0. */
  readonly weekdays: ReadonlySet<number>;
  /** Serials. */
  readonly dates: ReadonlySet<number>;
  readonly said: string;
}

const weekdayNames = ["sat", "sun", "mon", "tue", "wed", "thu", "fri"];

export const noDaysOff: DaysOff = { weekdays: new Set(), dates: new Set(), said: "none" };

const unread = (word: string) => badInput`days off: “${word}” is no weekday and no date: type days such as Sun, 2026-12-25`;

/** Weekdays by their first three letters and ISO dates, in one cell. */
export const daysOffArg: Arg<DaysOff> = {
  label: "days when the shop is closed",
  example: "Sun, 2026-12-25",
  sample: () => "days such as Sun, 2026-12-25",
  say: ({ said }: DaysOff) => said,
  read: (cell) => {
    if (isFault(cell)) throw handedOn(cell);
    const weekdays = new Set<number>();
    const dates = new Set<number>();
    const words =
      typeof cell === "number"
        ? [cell]
        : shown(cell).length &&
          String(cell)
            .split(/[,;\s]+/)
            .filter(Boolean);
    for (const word of words || []) {
      const day = typeof word === "number" ? word : readDate(word);
      if (day !== undefined) {
        if (!(day >= 61 && day < 2958466)) throw unread(String(word));
        dates.add(Math.floor(day));
        continue;
      }
      const weekday = weekdayNames.indexOf(String(word).slice(0, 3).toLowerCase());
      if (weekday < 0 || !/^[a-z]+\.?$/i.test(String(word))) throw unread(String(word));
      weekdays.add(weekday);
    }
    if (weekdays.size === 7) throw badInput`days off: all seven weekdays are off: leave one out`;
    return { weekdays, dates, said: String(cell) };
  },
};
