import * as fc from "fast-check";
import { readDate } from "../../../shared/serial";
import { spill } from "../../ask";
import { near, within } from "../../within";

const book = (...runs: (string | number | null)[][]) => spill("RESINBOOK", runs);
const fault = (message: string, error = "#VALUE!") => [
  { error, message },
  { error, message },
  { error, message },
];

describe("RESINBOOK", () => {
  it("tells volume, dye rate and use-by after each run (by hand)", () => {
    const answer = book(
      ["2026-01-31", 2, 0.5, 0.8],
      ["2026-02-20", 1, 0.36, 0.7],
      ["2026-03-10", "", "", 0.5],
      ["2026-03-12", 0.5, "", ""],
    ) as number[][];
    const expected = [
      [1.2, 0.25],
      [1.5, 0.66 / 2.2],
      [1, 0.3],
      [1.5, 0.2],
    ];
    expected.forEach(([volume, rate], i) => {
      within(answer[i][0], volume, 1e-12);
      within(answer[i][1], rate, 1e-12);
      expect(answer[i][2]).toBe(readDate("2026-04-30"));
    });
  });

  it("may begin with what stands there today", () => {
    const [[volume, rate, useBy]] = book(["2025-12-15", 1.5, 0.3, ""]);
    near(volume, 1.5);
    near(rate, 0.2);
    expect(useBy).toBe(readDate("2026-03-15"));
  });

  it("starts afresh once it was emptied, by the word or to the last drop", () => {
    for (const last of ["emptied", " Emptied ", 2]) {
      const answer = book(["2026-01-31", 2, 0.5, ""], ["2026-02-20", "", "", last], ["2026-03-10", 1, 0.5, ""]);
      expect(answer[1]).toEqual([0, "", ""]);
      near(answer[2][1], 0.5);
      expect(answer[2][2]).toBe(readDate("2026-06-10"));
    }
  });

  it("keeps the use-by of an older part that was poured in later", () =>
    expect(book(["2026-03-10", 1, 0, ""], ["2026-01-31", 1, 0, ""])[1][2]).toBe(readDate("2026-04-30")));

  it("dates the resin by what was poured in, not by what was taken out", () =>
    expect(book(["2026-03-10", 1, 0, ""], ["2026-01-31", 0, 0, 0.5])[1][2]).toBe(readDate("2026-06-10")));

  it("takes the months from the shop", () =>
    expect(spill("RESINBOOK", [["2026-01-31", 1, 0, 0]], [["catalyzed months", 1]])[0][2]).toBe(readDate("2026-02-28")));

  it("keeps an empty row empty, so that answers stand beside their runs", () => {
    const answer = book(
      [null, null, null, null],
      ["2026-01-31", 2, 0, 0],
      ["", "", "", ""],
      [0, 0, 0, 0],
      ["2026-02-01", 0, 0, 1],
      ["", "", "", ""],
    );
    expect(answer.map(([volume]) => volume)).toEqual(["", 2, "", "", 1]);
    expect(spill("RESINBOOK", [["", "", "", ""]])).toEqual([[""]]);
  });

  it("refuses a negative balance in its row, and the rows after it wait for it", () =>
    expect(
      book(["2026-01-31", 2, 0.5, 0.5], ["2026-02-20", 0.5, 0, 2.5], ["2026-03-10", 1, 0, ""], ["2026-03-11", 1, 0, 0.5]).slice(1),
    ).toEqual([
      fault("2.5 qt taken up, but there was only 2 qt"),
      fault("waits for row 2: fix that first", "#N/A"),
      fault("waits for row 2: fix that first", "#N/A"),
    ]));

  it("waits no longer once it was emptied: what stands is known again", () => {
    const answer = book(["2026-01-31", 1, 0, 2], ["2026-02-20", 1, 0, 0], ["2026-03-01", "", "", "emptied"], ["2026-03-10", 1, 0, 0]);
    expect(answer.slice(2)).toEqual([
      [0, "", ""],
      [expect.closeTo(1, 12), 0, readDate("2026-06-10")],
    ]);
  });

  it.each([
    [["yesterday", 1, 0, 0], "date: “yesterday” is not a date: type a date such as 2026-03-14"],
    [["", 1, 0, 0], "date is missing: type a date such as 2026-03-14"],
    [["2026-01-31", -1, 0, 0], "added must be from 0 qt to 1000000 qt: -1 qt is outside"],
    [["2026-01-31", 1, "a lot", 0], "dye added: “a lot” is not a volume: type a value such as 0.5 tsp"],
    [["2026-01-31", 1, 0, "all"], "taken up: “all” is not a volume: type a value such as 0.8 qt"],
    [["2026-01-31", 0, 1, 0], "dye was added, but there was no resin"],
  ])("says in its row what is wrong with %j", (run, message) => expect(book(run)).toEqual([fault(message)]));

  it("refuses a fifth column", () =>
    expect(spill("RESINBOOK", [["2026-01-31", 1, 0, 0, "note"]])).toEqual([
      [{ error: "#VALUE!", message: "runs takes four columns: date, added, dye added, taken up" }],
    ]));

  const run = fc.record({
    day: fc.integer({ min: 46_000, max: 47_000 }),
    added: fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 20, noNaN: true })),
    dye: fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 5, noNaN: true })),
    share: fc.oneof(fc.double({ min: 0, max: 0.999, noNaN: true }), fc.constantFrom(0, 1)),
  });

  it.each(["US", "SI"])("keeps fluid and dye to 1e-9 over many runs: what goes in is what leaves and what is left (%s)", (system) =>
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 60 }), (plan) => {
        let [fluid, dyed, poured, powder, left, gone] = [0, 0, 0, 0, 0, 0];
        const runs = plan.map(({ day, added, dye, share }) => {
          const spoon = added > 0 || fluid > 0 ? dye : 0;
          const there = fluid + added;
          const taken = there * share;
          poured += added;
          powder += spoon;
          gone += taken;
          left += (dyed + spoon) * share;
          [fluid, dyed] = [there - taken, (dyed + spoon) * (1 - share)];
          return [day, added, spoon, taken];
        });
        const answer = spill("RESINBOOK", runs, system) as (number | "")[][];
        const [volume, rate] = answer.at(-1)!;
        within((volume as number) + gone, poured, 1e-9 * Math.max(1, poured));
        const inIt = rate === "" ? 0 : (volume as number) * rate;
        within(inIt + left, powder, 1e-9 * Math.max(1, powder));
      }),
    ),
  );
});
