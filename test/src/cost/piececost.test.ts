import { ask, fault, spill } from "../../ask";

describe("PIECECOST", () => {
  it.each([
    { total: 62, pieces: 20, spoiled: 4, is: 3.875, from: "by hand" },
    { total: 100, pieces: 3, spoiled: undefined, is: 100 / 3, from: "not rounded" },
    { total: 0, pieces: 5, spoiled: 0, is: 0, from: "by hand" },
  ])("$total for $pieces pieces, $spoiled spoiled, is $is ($from)", ({ total, pieces, spoiled, is }) =>
    expect(ask("PIECECOST", total, pieces, spoiled)).toBe(is),
  );

  it("answers a column", () => expect(spill("PIECECOST", 60, [20, 30, ""], [0, "", ""])).toEqual([[3], [2], [""]]));

  it.each([
    [5, 5],
    [0, 0],
    [5, 7],
  ])("has no answer where of %d pieces %d are spoiled", (pieces, spoiled) =>
    expect(fault("PIECECOST", 10, pieces, spoiled)).toEqual({
      error: "#N/A",
      message: `no good piece is left: ${spoiled} of ${pieces} spoiled`,
    }),
  );

  it.each([
    [-1, 5, 0, "cost of the run must be from 0 to 1000000000000: -1 is outside"],
    ["$62", 5, 0, "cost of the run: “$62” is text: type the amount as a number, without a currency sign"],
    [62, 2.5, 0, "pieces in the run must be a whole number: 2.5 is not"],
    [62, "", 0, "pieces in the run is missing: type a value such as 20"],
    [62, 5, -1, "spoiled pieces must be from 0 to 1000000: -1 is outside"],
  ])("refuses %s, %s, %s in words", (total, pieces, spoiled, message) =>
    expect(fault("PIECECOST", total, pieces, spoiled)).toEqual({ error: "#VALUE!", message }),
  );
});
