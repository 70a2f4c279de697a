import { between, fixedText, isColumn, rangeText, refText, refTo, whole } from "../../../src/workbook/place";

const sheet = "My Shop";
const cell = refTo(sheet, 4, 1);
const column = refTo(sheet, 9, 2, 25);

it.each([
  { ref: cell, from: sheet, row: undefined, out: "B5" },
  { ref: cell, from: "Blanks", row: undefined, out: "'My Shop'!$B$5" },
  { ref: column, from: sheet, row: undefined, out: "C10:C34" },
  { ref: column, from: sheet, row: 3, out: "C13" },
  { ref: column, from: "Today", row: 3, out: "'My Shop'!C13" },
  { ref: column, from: sheet, row: "alert" as const, out: "$C10" },
  { ref: cell, from: sheet, row: 3, out: "$B$5" },
  { ref: whole(column), from: sheet, row: 3, out: "$C$10:$C$34" },
  { ref: refTo("Woods", 0, 0), from: "Blanks", row: undefined, out: "Woods!$A$1" },
])("on $from, row $row, it is written $out", ({ ref, from, row, out }) => expect(refText(ref, from, row)).toBe(out));

it("a block reaches from one reference to the other", () => {
  expect(rangeText(between(cell, column))).toBe("B5:C34");
  expect(fixedText(column)).toBe("'My Shop'!$C$10:$C$34");
});

it("a list to look into does not run along with the rows", () => {
  expect(isColumn(column)).toBe(true);
  expect(isColumn(whole(column))).toBe(false);
});
