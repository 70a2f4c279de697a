import { dateOf, edate, isoDate, readDate } from "../../shared/serial";
import published from "../published/dates.json";

const day = (iso: string | undefined) => readDate(iso!)!;

describe("days", () => {
  it.each(published.filter(({ quantity }) => quantity === "DATE"))("$iso is $expected ($source)", ({ iso, expected }) => {
    expect(readDate(iso)).toBe(expected);
    expect(isoDate(expected)).toBe(iso);
  });

  it.each(published.filter(({ quantity }) => quantity === "DAYS"))("from $start to $iso are $expected", ({ iso, start, expected }) =>
    expect(day(iso) - day(start)).toBe(expected),
  );

  it.each(published.filter(({ quantity }) => quantity === "EDATE"))(
    "$start and $months months are $iso ($source)",
    ({ start, months, expected, iso }) => {
      expect(edate(day(start), months!)).toBe(expected);
      expect(isoDate(expected)).toBe(iso);
    },
  );

  it("drops the time of day before it counts months", () => expect(edate(45322.99, 1.9)).toBe(45351));

  it("reads a time of day", () => {
    expect(readDate("2026-03-14 12:00")).toBe(46095.5);
    expect(readDate("2026-03-14T18:00")).toBe(46095.75);
    expect(dateOf(46095.75)).toEqual({ year: 2026, month: 2, day: 14 });
  });

  it.each(["2026-02-29", "2026-13-01", "14.3.2026", "3/14/2026", "2026-3-14", "2026-03-14 24:00", "tomorrow", ""])(
    "“%s” is no date",
    (typed) => expect(readDate(typed)).toBeUndefined(),
  );
});
