import { readDate } from "../../../shared/serial";
import { ask, fault, spill } from "../../ask";
import published from "../../published/dates.json";

const forward = published.filter(({ quantity, months }) => quantity === "EDATE" && months! >= 0);

describe("EXPIRY", () => {
  it.each(forward)("$start and $months months: $iso ($source)", ({ start, months, expected }) => {
    expect(ask("EXPIRY", start, months)).toBe(expected);
    expect(ask("EXPIRY", readDate(start!), months)).toBe(expected);
  });

  it("keeps three months unless the shop or an argument says otherwise", () => {
    expect(ask("EXPIRY", "2026-01-31")).toBe(readDate("2026-04-30"));
    expect(ask("EXPIRY", "2026-01-31", "", [["catalyzed months", "1 year"]])).toBe(readDate("2027-01-31"));
    expect(ask("EXPIRY", "2026-01-31", 6, [["catalyzed months", 12]])).toBe(readDate("2026-07-31"));
    expect(ask("EXPIRY", "2026-01-31", "", [["catalysed months", 12]])).toBe(readDate("2027-01-31"));
  });

  it("counts from the day, whatever the hour", () => expect(ask("EXPIRY", 46095.9, 0)).toBe(46095));

  it("answers each row of a column", () =>
    expect(spill("EXPIRY", [46053, "", "soon"], 3)).toEqual([
      [46142],
      [""],
      [{ error: "#VALUE!", message: "day it was mixed: “soon” is not a date: type a date such as 2026-03-14" }],
    ]));

  it.each([
    [60, 3, "#VALUE!", "day it was mixed is before 1 March 1900, where spreadsheets disagree about the calendar: type a later date"],
    [46053, -1, "#VALUE!", "months catalyzed resin keeps must be from 0 months to 1200 months: -1 months is outside"],
    ["9999-12-01", 3, "#N/A", "the use-by date falls after the year 9999: check the months"],
    [1e9, 3, "#VALUE!", "day it was mixed: “1000000000” is not a date: type a date such as 2026-03-14"],
  ])("of %s and %d months is %s", (mixed, months, error, message) => expect(fault("EXPIRY", mixed, months)).toEqual({ error, message }));
});
