import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { Followed } from "../beside/followed";
import type { Looks } from "../beside/looks";
import type { SheetBeside } from "../beside/sheet";
import type { Beside } from "../save";
import { rangeKey } from "./needs";

type Ids = ReadonlyMap<string, string>;

/** What is kept by ids, by the ids that came in their place; the rest stays behind. */
const rekeyed = <T>(kept: Readonly<Record<string, T>> = {}, ids: Ids): Record<string, T> =>
  Object.fromEntries(Object.entries(kept).flatMap(([id, one]) => (ids.has(id) ? [[ids.get(id), one] as const] : [])));

/** Names for tables, which hold for a whole workbook, as names of ranges do. */
function tableNamer(book: WorkbookData, sheets: Readonly<Record<string, SheetBeside>>): (name: string) => string {
  const tables = Object.values(sheets).flatMap((sheet) => sheet.tables);
  const taken = new Set([...tables.map(({ name }) => name), ...Object.keys(book.namedRanges)].map(rangeKey));
  return (name) => {
    let free = name;
    for (let number = 2; taken.has(rangeKey(free)); number++) free = `${name}${number}`;
    taken.add(rangeKey(free));
    return free;
  };
}

/** Number formats spelt as their files spell them; the workbook's own spelling comes first. */
function withSpelling(own: Looks | undefined, from: Looks | undefined): Looks | undefined {
  if (!from?.formats.length) return own;
  const known = new Set(own?.formats.map(([format]) => format));
  return { ...own, formats: [...(own?.formats ?? []), ...from.formats.filter(([format]) => !known.has(format))] };
}

export interface Joining {
  /** Of sheets, and of figures: the old ids and the new. */
  readonly ids: Ids;
  readonly figures: Ids;
  /** The workbook's data with the sheets in it. */
  readonly book: WorkbookData;
}

/** What stands beside a workbook once sheets of a file have joined it. */
export function withBeside<Work extends Beside>(work: Work, from: Beside, { ids, figures, book }: Joining): Work {
  const nameOf = tableNamer(book, work.sheets ?? {});
  const sheet = (own: SheetBeside): SheetBeside => ({
    ...own,
    charts: rekeyed(own.charts, figures),
    links: own.links.map(({ to, ...link }) => {
      const sheetId = to && ids.get(to.sheetId);
      return sheetId === undefined ? link : { ...link, to: { ...to!, sheetId } };
    }),
    tables: own.tables.map((table) => ({ ...table, name: nameOf(table.name) })),
  });
  const sheets = Object.entries(rekeyed(from.sheets, ids)).map(([id, own]) => [id, sheet(own)] as const);
  return {
    ...work,
    print: { ...work.print, ...rekeyed(from.print, ids) },
    documents: { ...from.documents, ...work.documents },
    sheets: { ...work.sheets, ...Object.fromEntries(sheets) },
    looks: withSpelling(work.looks, from.looks),
  };
}

type Keeping = WorkbookData & { readonly followed?: Followed };

/** The ranges that are followed in a workbook once sheets of a file have joined it. */
export const withFollowed = (book: Keeping, file: Keeping, ids: Ids): Followed => ({ ...book.followed, ...rekeyed(file.followed, ids) });
