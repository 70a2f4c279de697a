import { styleOf } from "../../../src/workbook/looks";
import { ofKey } from "../../../src/workbook/place";
import { template } from "../../../src/workbook/sheets/template";

/** Points that one character of a column's width takes, margins of half an inch aside: 7 pixels of 96 to the inch. */
const perCharacter = (7 / 96) * 72;
const papers = { US: [612, 792], SI: [595.3, 841.9] } as const;
const least = 9;
const sum = (widths: readonly number[]) => widths.reduce((a, b) => a + b, 0);

/** Characters that a page must hold for a table to go over two, the first columns on both. */
const overTwo = (widths: readonly number[], repeated: number): number =>
  Math.min(
    ...widths
      .map((_, first) => Math.max(sum(widths.slice(0, first)), sum(widths.slice(0, repeated)) + sum(widths.slice(first))))
      .slice(repeated),
  );

describe.each(["US", "SI"] as const)("on the paper of the %s edition", (system) => {
  const sheets = (["demo", "empty"] as const).flatMap((filled) => template(system, filled).book.sheets.map((sheet) => ({ filled, sheet })));

  it.each(sheets.map(({ filled, sheet }) => [`${sheet.name}, ${filled}`, sheet] as const))(
    "%s has at least nine points, and words that end on their page",
    (_, { widths, print, cells, merges }) => {
      const printed = widths.slice(0, print.columns);
      const room = papers[system][print.landscape ? 1 : 0] - 72;
      const { two } = print;
      const needed = two ? overTwo(printed, two.repeated) : sum(printed);
      const scale = print.exact ? 1 : Math.min(1, room / (needed * perCharacter));
      // Bars are no words.
      const sizes = [...cells].flatMap(([at, { look, format, value, formula }]) =>
        ofKey(at)[1] < printed.length && look !== "bars" && (value !== undefined || formula)
          ? (styleOf(look, format).font?.size ?? 11)
          : [],
      );
      expect(Math.min(...sizes) * scale).toBeGreaterThanOrEqual(least);
      if (!two) return;
      expect(sum(printed.slice(0, two.words)) * perCharacter * scale).toBeLessThanOrEqual(room);
      // What reaches over columns is a line of words: it must not run on to the other page.
      for (const { row, column, columns } of merges)
        expect([row, column + columns <= two.words || column >= two.words]).toEqual([row, true]);
    },
  );
});
