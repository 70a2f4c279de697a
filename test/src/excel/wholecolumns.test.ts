import { trimmed } from "../../../src/excel/wholecolumns";

const rows = 100;
const column = (blank: unknown, ...filled: unknown[]): unknown[][] =>
  Array.from({ length: rows }, (_, row) => [row < filled.length ? filled[row] : blank]);

it.each([[null], [""], [0]])("a whole column ends where the last of them is filled, blanks as %j", (blank) => {
  const [a, b, one] = trimmed([column(blank, 1, 2, 3), column(blank, 4), [[5]]], rows);
  expect([a, b, one]).toEqual([[[1], [2], [3]], [[4], [blank], [blank]], [[5]]]);
});

it("keeps a nought that was typed", () => expect(trimmed([column(null, 1, 0)], rows)).toEqual([[[1], [0]]]));
it("keeps one row of an empty column", () => expect(trimmed([column("")], rows)).toEqual([[[""]]]));
it("leaves a range that was chosen as it is", () => {
  const chosen = [[[1], [""], [""]]];
  expect(trimmed(chosen, rows)).toBe(chosen);
});
it("knows the rows of Excel's sheets", () => {
  const whole = Array<unknown[]>(1_048_576).fill([null]);
  whole[1] = [7];
  expect(trimmed([whole])).toEqual([[[null], [7]]]);
});
