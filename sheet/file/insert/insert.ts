import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { fixed, rangeKey } from "../../../shared/xlsx/names";
import { sheetKey, sheetWord } from "../../../shared/xlsx/sheetname";
import { allFollowed } from "../beside/followed";
import { rekeyed } from "../beside/piece";
import { joinBeside } from "../beside/pieces";
import type { Opened } from "../open";
import type { Beside } from "../save";
import { withStyles } from "./joinedstyles";
import { claimed, namesFor } from "./names";
import { needed } from "./needs";
import { reworded } from "./rewording";
import { type SheetData, withFormulas } from "./sheetformulas";

export type Engine = Pick<typeof OSpreadsheet, "load" | "links" | "helpers">;

/** Ids for sheets that join a workbook, by the ids they had: none that a sheet has, or had when its print set-up was kept. */
function idsFor(joining: readonly SheetData[], book: WorkbookData, { print }: Beside): ReadonlyMap<string, string> {
  const taken = new Set([...book.sheets.map(({ id }) => id), ...Object.keys(print)].map(sheetKey));
  return new Map(joining.map(({ id }) => [id, claimed(id, taken)]));
}

/** What stands for a sheet that got another name. */
function newWord(names: ReadonlyMap<string, string>, name: string): string | undefined {
  const now = names.get(sheetKey(name));
  return now !== undefined && sheetKey(now) !== sheetKey(name) ? sheetWord(now) : undefined;
}

/** The named ranges of a file that join a workbook, and what stands for those whose names are taken. */
function rangesFor(file: WorkbookData, book: WorkbookData, names: ReadonlyMap<string, string>) {
  const taken = new Set(Object.keys(book.namedRanges).map(rangeKey));
  const added: Record<string, string> = {};
  const instead = new Map<string, string>();
  for (const [name, range] of Object.entries(file.namedRanges)) {
    let joins = false;
    const sheet = (own: string) => {
      joins ||= names.has(sheetKey(own));
      return newWord(names, own);
    };
    const renamed = reworded(range, { sheet, range: () => undefined });
    if (!joins) continue;
    if (taken.has(rangeKey(name))) instead.set(rangeKey(name), fixed(renamed));
    else added[name] = renamed;
  }
  return { added, instead };
}

const toSheet = "o-spreadsheet://";

/** Links to sheets that came along lead there; of the others only the words stay. */
function withLinks(sheet: SheetData, ids: ReadonlyMap<string, string>, { links }: Engine): SheetData {
  const linked = (content: string): string => {
    if (!links.isMarkdownLink(content)) return content;
    const { label, url } = links.parseMarkdownLink(content);
    if (!url.startsWith(toSheet)) return content;
    const id = ids.get(url.slice(toSheet.length));
    if (id === undefined) return label.startsWith("=") ? `'${label}` : label;
    return links.markdownLink(label, toSheet + id);
  };
  const cells = Object.entries(sheet.cells).map(([address, content]) => [address, typeof content === "string" ? linked(content) : content]);
  return { ...sheet, cells: Object.fromEntries(cells) };
}

/** New ids for figures: they hold for a whole workbook. */
function figureIds(joining: readonly SheetData[], book: WorkbookData): ReadonlyMap<string, string> {
  const there = book.sheets.flatMap(({ figures }) => figures);
  const taken = new Set(there.flatMap(({ id, data }) => [id, data?.chartId ?? id]).map(sheetKey));
  return new Map(joining.flatMap(({ figures }) => figures.map(({ id }) => [id, claimed("figure", taken)])));
}

/** A chart has one more id of its own. */
const withFigures = (sheet: SheetData, ids: ReadonlyMap<string, string>): SheetData => ({
  ...sheet,
  figures: sheet.figures.map((figure) => {
    const id = ids.get(figure.id)!;
    return { ...figure, id, data: figure.tag === "chart" ? { ...figure.data, chartId: id } : figure.data };
  }),
});

/**
 * Puts sheets of a file, and all that these take numbers from, at the end of a workbook. What is there stays as it is: a sheet
 * whose name is taken gets a number, and a named range whose name is taken is written out where the new sheets use it.
 * Throws Unreadable when the file has no such sheet.
 */
export function inserted<Work extends Beside & { readonly book: WorkbookData }>(
  work: Work,
  from: Opened,
  sheets: readonly string[],
  engine: Engine,
): { readonly work: Work; readonly added: readonly string[] } {
  const file = engine.load(engine.helpers.deepCopy(from.book));
  const joining = needed(file.sheets, sheets, new Map(Object.entries(file.namedRanges).map(([name, range]) => [rangeKey(name), range])));
  if (!joining.length) return { work, added: [] };
  const names = namesFor(joining, work.book.sheets);
  const ids = idsFor(joining, work.book, work);
  const figures = figureIds(joining, work.book);
  const ranges = rangesFor(file, work.book, names);
  const words = {
    sheet: (name: string) => newWord(names, name),
    range: (name: string) => ranges.instead.get(rangeKey(name)),
  };
  const renamed = joining.map((sheet) => ({
    ...withFigures(
      withLinks(
        withFormulas(sheet, (formula) => reworded(formula, words)),
        ids,
        engine,
      ),
      figures,
    ),
    id: ids.get(sheet.id)!,
    name: names.get(sheetKey(sheet.name))!,
  }));
  const { sheets: added, ...pools } = withStyles(work.book, file, renamed);
  const book = {
    ...work.book,
    ...pools,
    sheets: [...work.book.sheets, ...added],
    namedRanges: { ...work.book.namedRanges, ...ranges.added },
    followed: { ...allFollowed(work.book), ...rekeyed(allFollowed(file), ids) },
  };
  return { work: { ...work, ...joinBeside(work, from, { ids, figures, book }), book }, added: added.map(({ name }) => name) };
}
