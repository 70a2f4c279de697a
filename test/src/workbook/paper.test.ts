import { room } from "../../../src/checklist/onsheet";
import { nothingCached } from "../../../src/workbook/cached";
import { heightsOf } from "../../../src/workbook/heights";
import { styleOf } from "../../../src/workbook/looks";
import { narrowest } from "../../../src/workbook/paper";
import { ofKey } from "../../../src/workbook/place";
import { template } from "../../../src/workbook/sheets/template";
import { shownCells } from "../../../src/workbook/shown";

/** Points that one character of a column's width takes, in a program that does not round the digits of 11-point Calibri down to 7 pixels. */
const perCharacter = 11 * 0.507;
/** Inches at each side. */
const usual = 0.4;
/** Inches above and below. */
const ends = 0.5 + 0.6;
const papers = { US: [612, 792], SI: [595.3, 841.9] } as const;
const least = 9;
const sum = (widths: readonly number[]) => widths.reduce((a, b) => a + b, 0);

describe.each(["US", "SI"] as const)("on the paper of the %s edition", (system) => {
  const sheets = (["demo", "empty"] as const).flatMap((filled) => template(system, filled).book.sheets.map((sheet) => ({ filled, sheet })));

  it.each(sheets.map(({ filled, sheet }) => [`${sheet.name}, ${filled}`, sheet] as const))(
    "%s has at least nine points, and words that end on their page",
    (_, { widths, print, cells, merges }) => {
      const printed = widths.slice(0, print.columns);
      const room = papers[system][print.landscape ? 1 : 0] - 2 * 72 * (print.narrow ? narrowest : usual);
      const { two } = print;
      // The first columns, then the others beside some of the first again.
      const pages = two ? [printed.slice(0, two.first), [...printed.slice(0, two.repeated), ...printed.slice(two.first)]] : [printed];
      const needed = Math.max(...pages.map(sum));
      const scale = print.exact ? 1 : Math.min(1, room / (needed * perCharacter));
      // Bars are no words.
      const sizes = [...cells].flatMap(([at, { look, format, value, formula }]) =>
        ofKey(at)[1] < printed.length && look !== "bars" && (value !== undefined || formula)
          ? (styleOf(look, format).font?.size ?? 11)
          : [],
      );
      expect(Math.min(...sizes) * scale).toBeGreaterThanOrEqual(least);
      // What reaches over columns is a line of words: it must not run on to the other page.
      for (const { row, column, columns } of two ? merges : []) expect([row, column + columns <= two!.first]).toEqual([row, true]);
    },
  );

  it.each(["demo", "empty"] as const)("the safety list of the %s workbook is one page in ten points, every item a line", (filled) => {
    const whole = template(system, filled);
    const sheet = whole.book.sheets.find(({ name }) => name === "Safety")!;
    const { widths, print } = sheet;
    const [wide, high] = papers[system];
    const shown = shownCells(sheet, whole.live(), nothingCached);
    const heights = heightsOf(sheet, shown);
    const needed = Array.from({ length: print.rows! }, (_, row) => heights.get(row) ?? 15);
    const scale = Math.min(
      (wide - 2 * 72 * narrowest) / (sum(widths.slice(0, print.columns)) * perCharacter),
      (high - 72 * ends) / sum(needed),
    );
    expect(print).toMatchObject({ pages: 1, narrow: true });
    const points = [...shown].flatMap(([at, { cell }]) => {
      const [row, column] = ofKey(at);
      return row < print.rows! && column < print.columns! && cell.value !== undefined
        ? [styleOf(cell.look, cell.format).font?.size ?? 11]
        : [];
    });
    expect(Math.min(...points) * Math.min(1, scale)).toBeGreaterThanOrEqual(10);
    const first = needed.length - room;
    expect(new Set(needed.slice(first))).toEqual(new Set([sheet.line]));
  });
});
