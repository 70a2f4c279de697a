import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import type { FileRow } from "../../../shared/xlsx/cells";
import { type Edit, withEdits } from "../../../shared/xlsx/edits";
import { dynamicMark } from "../../../shared/xlsx/metadata";
import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { put } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { StylePool } from "../../../shared/xlsx/styles";
import type { Looks } from "../beside/looks";
import { type Engine as Cells, cellEdits, formulaAt, positionAt } from "./cells";
import type { Compared } from "./compared";
import { spelling } from "./enginespelling";
import { groupsKey } from "./groups";
import { isLink, targetOf, withLinks } from "./links";
import { madeRules } from "./maderules";
import { withResultFormats } from "./newformats";
import type { Replayed } from "./replayed";
import { ruleChanges } from "./rules";
import { stepped } from "./steps";
import { type Structure, touchKey } from "./structure";
import { cellStyleChanges } from "./stylechanges";
import { styleAt } from "./stylelookup";

export type Engine = Pick<typeof OSpreadsheet, "Model"> & Cells;

interface Writing {
  readonly replayed: Replayed;
  readonly structure: Structure;
  readonly found: Compared;
  readonly rowsAt: (path: string) => readonly FileRow[];
  readonly looks: Looks | undefined;
}

/** The styles of a workbook; undefined where the file has none. */
function poolOf({ parts, path }: Book): { readonly path: string; readonly pool: StylePool } | undefined {
  const styles = relationsOf(parts, path).find(({ kind }) => kind === "styles")?.path;
  return styles && parts.has(styles) ? { path: styles, pool: new StylePool(textOf(parts, styles)) } : undefined;
}

/** Writes the sheets that somebody changed into their parts; answers the cells that hold no formula any more, by part. */
export async function writeSheets(
  model: Model,
  engine: Engine,
  { replayed: { book, paths }, structure, found, rowsAt, looks: kept }: Writing,
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const { before, now, pairs, places, around, changes, dirty, unsure } = found;
  const { parts } = book;
  const fileFormat = (format: string): string => kept?.formats.find(([own]) => own === format)?.[1] ?? format;
  const typed = new Map(
    [...changes].map(([id, addresses]) => [
      id,
      new Map(addresses.map((address) => [address, formulaAt(model, positionAt(id, address)) ?? ""] as const).filter(([, text]) => text)),
    ]),
  );
  const spell = await spelling(typed, now, engine);
  const rulesOf = new Map([...pairs].map(([id, pair]) => [id, ruleChanges(pair, structure.touched)]));
  const made = await madeRules(
    [...rulesOf].map(([id, { colors, typing }]) => ({ id, conditionalFormats: [...colors.came], dataValidationRules: [...typing.came] })),
    now,
    engine,
  );
  const styles = poolOf(book);
  const mark = () => dynamicMark(parts, book.path);
  const removed = new Map<string, Set<string>>();
  for (const [id, pair] of pairs) {
    const path = paths.get(id)!;
    const xml = textOf(parts, path);
    const looks = cellStyleChanges(pair, before, now, fileFormat);
    const own = changes.get(id)!;
    const dirtyHere = dirty.filter(({ sheetId }) => sheetId === id);
    let text = xml;
    if (own.length || dirtyHere.length || looks.size) {
      const rows = rowsAt(path);
      const edits = cellEdits({ id, rows }, own, dirtyHere, { model, engine, around, written: spell, unsure, mark });
      const chained = new Set(own.filter((address) => edits.get(address)?.formula === null));
      if (chained.size) removed.set(path, chained);
      withResultFormats(model, id, own, looks, fileFormat);
      const base = looks.size && styleAt(xml, rows);
      for (const [address, change] of looks)
        if (base && styles) edits.set(address, { ...edits.get(address), look: styles.pool.like(base(address), change) } as Edit);
      text = withEdits(xml, edits, rows);
    }
    text = stepped(text, {
      pair,
      rules: rulesOf.get(id)!,
      places: places.get(path) ?? { rules: {}, validations: {} },
      made: made(id),
      look: (one) => styles?.pool.ofRule(one) ?? 0,
      isRegrouped: structure.touched.includes(touchKey(id, groupsKey)),
      isStill: structure.steps.length === 0,
    });
    const links = new Map(
      own
        .filter((address) => targetOf(pair.before?.cells[address]) !== targetOf(pair.now.cells[address]))
        .map((address) => [address, isLink(pair.now.cells[address]) ? String(pair.now.cells[address]) : undefined]),
    );
    text = withLinks(parts, path, text, links, (other) => now.sheets.find((one) => one.id === other)?.name);
    if (text !== xml) put(parts, path, text);
  }
  if (styles?.pool.isChanged) put(parts, styles.path, styles.pool.written());
  return removed;
}
