import fc from "fast-check";
import { fractionText } from "../../shared/fraction";

// The two-digit column is what LibreOffice 7.4 shows for the format "# ??/??", blanks for alignment left out.
it.each([
  [0, "0"],
  [3, "3"],
  [0.75, "3/4"],
  [0.8125, "13/16"],
  [1.125, "1 1/8"],
  [1.5, "1 1/2"],
  [0.12, "3/25"],
  [17 / 24, "17/24"],
  [0.015625, "1/64"],
  [1 / 3, "1/3"],
  [0.999, "1"],
  [2.999, "3"],
  [-0.5, "-1/2"],
  [-0.001, "0"],
])("%d is %s", (value, text) => expect(fractionText(value, 99)).toBe(text));

it("keeps to a bottom that is given", () => {
  expect([0.5, 0.75, 1.0625, 0.99].map((value) => fractionText(value, 16, true))).toEqual(["8/16", "12/16", "1 1/16", "1"]);
});

it("is nearer than half of the finest step", () => {
  const read = (text: string) =>
    text.split(" ").reduce(
      (sum, part) =>
        sum +
        part
          .split("/")
          .map(Number)
          .reduce((top, bottom) => top / bottom),
      0,
    );
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), (value) => {
      expect(Math.abs(read(fractionText(value, 99)) - value)).toBeLessThanOrEqual(1 / 198 + 1e-9);
    }),
    { numRuns: 300 },
  );
});
