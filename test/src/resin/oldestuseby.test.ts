import * as fc from "fast-check";
import { readDate } from "../../../shared/serial";
import { ask, fault } from "../../ask";

const day = fc.integer({ min: 40_000, max: 60_000 });

describe("OLDESTUSEBY", () => {
  it("is the oldest part's, and no topping up resets it", () => {
    expect(ask("OLDESTUSEBY", ["2026-03-14", "2026-01-31", "2026-02-20"])).toBe(readDate("2026-04-30"));
    fc.assert(
      fc.property(fc.array(day, { minLength: 1, maxLength: 12 }), day, (days, later) => {
        const before = ask("OLDESTUSEBY", days);
        expect(before).toBe(ask("EXPIRY", Math.min(...days)));
        expect(ask("OLDESTUSEBY", [...days, Math.max(...days, later)])).toBe(before);
      }),
    );
  });

  it("skips blanks, and blanks that arrive as zero", () => {
    expect(ask("OLDESTUSEBY", ["", 46095, null, 0, 46053])).toBe(46142);
    expect(ask("OLDESTUSEBY", [["", 46095, 46053]])).toBe(46142);
    expect(ask("OLDESTUSEBY", 46053)).toBe(46142);
    expect(ask("OLDESTUSEBY", ["", ""])).toBe("");
  });

  it("takes the months from an argument or the shop", () => {
    expect(ask("OLDESTUSEBY", [46053], 1)).toBe(readDate("2026-02-28"));
    expect(ask("OLDESTUSEBY", [46053], "", [["catalyzed months", 1]])).toBe(readDate("2026-02-28"));
  });

  it.each([
    [["2026-03-14", "soon"], "cell 2: day it was mixed: “soon” is not a date: type a date such as 2026-03-14"],
    [[46095, 12], "cell 2: day it was mixed is before 1 March 1900, where spreadsheets disagree about the calendar: type a later date"],
    [[0, 0], "the days on which it was mixed are all blank: type at least one"],
  ])("refuses %j in words", (dates, message) => expect(fault("OLDESTUSEBY", dates)).toEqual({ error: "#VALUE!", message }));
});
