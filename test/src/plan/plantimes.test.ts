import type { Fault } from "../../../shared/outcome";
import { fault, spill } from "../../ask";
import { linesOf, start } from "./cases";

describe("PLAN and its times", () => {
  it("counts days from 1 in words where it has no date, and months of 30 days", () => {
    const [line] = linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10));
    expect([line.in, line.out, line["use by"]]).toEqual(["day 1 08:30", "day 2 08:00", "day 91"]);
    expect(line.done).toMatch(/^day 2 \d\d:\d\d$/);
    expect(fault("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, "", undefined, [["days off", "2026-12-25"]]).error).toBe("#VALUE!");
    const twice = [["days off", "Tue"]];
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, "", undefined, twice))[0].out).toBe("day 3 08:00");
  });

  it("keeps days off free, but for soaking", () => {
    // The 14th of March 2026 is a Saturday.
    const out = (off: string) =>
      Math.floor(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["days off", off]]))[0].out as number);
    expect([out("Mon"), out("Sun"), out("Sun, mon"), out("sun 2026-03-16")]).toEqual([46096, 46097, 46098, 46098]);
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["days off", "Saturday"]]))[0].in).toBeCloseTo(
      46096 + 8.5 / 24,
      6,
    );
    for (const wrong of ["someday", "13/14/2026", "sun, mon, tue, wed, thu, fri, sat"])
      expect(fault("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["days off", wrong]]).error).toBe("#VALUE!");
  });

  it("counts back from ready by, to the latest opening that still serves", () => {
    const pieces = [["a", 100, 0.75, 0.75, 5, 0.45]];
    const due = "2026-04-01 10:00";
    for (const off of ["", "Sun, Wed"]) {
      const shop = [["days off", off]];
      const back = linesOf(spill("PLAN", pieces, 6, 12, "", undefined, [...shop, ["ready by", due]]));
      expect(back.at(-1)!.done).toBeLessThanOrEqual(46113 + 10 / 24);
      const opening = Math.floor(back[0].in as number) + 8 / 24;
      const from = (at: number) => linesOf(spill("PLAN", pieces, 6, 12, at, undefined, shop));
      expect(from(opening)).toEqual(back);
      expect(from(opening + 1).at(-1)!.done).toBeGreaterThan(46113 + 10 / 24);
    }
    expect(fault("PLAN", pieces, 6, 12, "", undefined, [["ready by", 62]]).message).toMatch(
      /^ready by is too early: the plan takes \d days$/,
    );
  });

  it("says by how much a load is late where both start and ready by are given", () => {
    const late = linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["ready by", "2026-03-14 09:00"]]))[0]
      .done as Fault;
    expect(late).toMatchObject({ error: "#N/A", message: expect.stringMatching(/^late by 2[3-5] h \d+ min$/) });
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["ready by", "2026-03-16"]]))[0].done).toBeLessThan(
      46097,
    );
  });

  it("refuses a bake longer than the day is open, and such a vacuum", () => {
    const short = [
      ["opens", 8],
      ["closes", 9],
      ["vacuum hours", 0.25],
    ];
    const [line] = linesOf(spill("PLAN", [["a", 5, 1.5, 1.5, 4, 0.5]], 6, 10, "", undefined, short));
    expect((line.done as Fault).message).toMatch(/^a bake of [\d.]+ min is longer than the open hours, 1 h$/);
    expect(fault("PLAN", [["a", 5, 1, 1, 4, 0.5]], 6, 10, "", undefined, [["vacuum hours", 12]])).toEqual({
      error: "#N/A",
      message: "loading and vacuum take 12.5 h, and the shop is open for 12 h: never leave vacuum alone",
    });
  });

  it("takes opens and closes as hours or as clock times", () => {
    const rows = [["a", 5, 1, 1, 4, 0.5]];
    const hours = [
      ["opens", 9],
      ["closes", 18],
    ];
    const times = [
      ["opens", 0.375],
      ["closes", 0.75],
    ];
    expect(spill("PLAN", rows, 6, 10, start, undefined, times)).toEqual(spill("PLAN", rows, 6, 10, start, undefined, hours));
    expect(fault("PLAN", rows, 6, 10, start, undefined, [["opens", 20]]).message).toBe(
      "closes must be later than opens: type hours such as 8 and 20",
    );
  });
});
