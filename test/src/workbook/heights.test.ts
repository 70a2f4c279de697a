import { linesOf } from "../../../src/workbook/heights";

it.each([
  { text: "", width: 10, lines: 1 },
  { text: "one two", width: 10, lines: 1 },
  { text: "one two three", width: 10, lines: 2 },
  { text: "aaaaaaaaaaaaaaa", width: 10, lines: 2 },
  { text: "aaaaaaaaaaaaaaa bb", width: 10, lines: 2 },
  { text: "a aaaaaaaaaaaaaaaaaaaaaaaaa", width: 10, lines: 4 },
])("“$text” takes $lines lines of $width", ({ text, width, lines }) => expect(linesOf(text, width)).toBe(lines));
