import { letters } from "../../shared/xlsx/letters";
import type { Print, Sheet } from "./book";
import { ofKey, type Ref } from "./place";

const margins = { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 };

/** Rows that head every page: the titles, and the units over them. */
export function titlesOf({ print: { titleRow }, cells }: Sheet): readonly [from: number, to: number] | undefined {
  if (titleRow === undefined) return undefined;
  const hasUnits = [...cells].some(([at, { look }]) => look === "unit" && ofKey(at)[0] === titleRow - 1);
  return [hasUnits ? titleRow - 1 : titleRow, titleRow];
}

/** Side margins in inches that most printers still reach. */
export const narrowest = 0.25;

/** A block in its own size, with nothing in its margins. Where a program lacks the font that column widths count in, it is fitted rather than cut. */
const exactly = ({ area, margins: { top, left } }: NonNullable<Print["exact"]>, paper: "letter" | "a4") => ({
  paperSize: paper,
  orientation: "portrait" as const,
  fitToPage: true,
  fitToWidth: 1,
  fitToHeight: 0,
  printArea: fixedArea(area),
  margins: { left, right: 0, top, bottom: 0, header: 0, footer: 0 },
});

const fixedArea = ({ row, column, rows, columns }: Ref) => `$${letters(column)}$${row + 1}:$${letters(column + columns - 1)}$${row + rows}`;

/** The print areas; each range starts a new page. */
function areaOf({ name, print, cells }: Sheet, titles: ReturnType<typeof titlesOf>, rows: number): string | undefined {
  const { columns, two, newPage } = print;
  if (!columns) return undefined;
  const end = letters((two?.first ?? columns) - 1);
  const bottom = print.rows ?? rows;
  if (newPage !== undefined) return `$A$1:$${end}$${newPage},${name}!$A$${newPage + 1}:$${end}$${bottom}`;
  const first = `$A$1:$${end}$${bottom}`;
  if (!two || !titles) return first;
  const last = Math.max(...[...cells.keys()].map(ofKey).flatMap(([row, column]) => (column >= two.first && column < columns ? row : [])));
  return `${first},${name}!$${letters(two.first)}$${titles[0] + 1}:$${letters(columns - 1)}$${last + 1}`;
}

export function pageOf(sheet: Sheet, titles: ReturnType<typeof titlesOf>, rows: number, paper: "letter" | "a4") {
  const { print } = sheet;
  return print.exact
    ? exactly(print.exact, paper)
    : {
        paperSize: paper,
        orientation: print.landscape ? ("landscape" as const) : ("portrait" as const),
        fitToPage: true,
        fitToWidth: 1,
        fitToHeight: print.pages ?? 0,
        printTitlesColumn: print.two && `$A:$${letters(print.two.repeated - 1)}`,
        printTitlesRow: titles && `$${titles[0] + 1}:$${titles[1] + 1}`,
        printArea: areaOf(sheet, titles, rows),
        margins: print.narrow ? { ...margins, left: narrowest, right: narrowest } : margins,
      };
}
