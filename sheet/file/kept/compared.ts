import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model, WorkbookData } from "@odoo/o-spreadsheet";
import type { Block } from "../../../shared/xlsx/address";
import type { FileRow } from "../../../shared/xlsx/cells";
import { withinSheet, withoutReferences } from "../../../shared/xlsx/move";
import { sharedBookOf } from "../../book";
import type { Places } from "../beside/ruleplaces";
import { type Around, aroundIn, unknownOf } from "../formulas/known";
import { type Engine as Basing, baseline, type Open } from "./baseline";
import { type Engine as Cells, positionAt } from "./cells";
import { Dependents, unknownIn } from "./dependents";
import { contentChanges, type Pair } from "./difference";
import { sheetCell } from "./place";
import { cutTo } from "./reach";
import type { Replayed } from "./replayed";

type Position = OSpreadsheet.CellPosition;

/** The workbook on the page against the file that it came from, as far as anything was done to it. Sheets go by the engine's ids. */
export interface Compared {
  readonly before: WorkbookData;
  readonly now: WorkbookData;
  readonly pairs: ReadonlyMap<string, Pair>;
  /** Where in their parts the rules stand, by the paths of the parts. */
  readonly places: ReadonlyMap<string, Places>;
  readonly around: Around;
  /** Cells with another content. */
  readonly changes: ReadonlyMap<string, readonly string[]>;
  /** Formulas whose result may be another. */
  readonly dirty: readonly Position[];
  /** Formulas that rest on what the engine does not know. */
  readonly unsure: ReadonlySet<string>;
}

interface Against {
  readonly replayed: Replayed;
  readonly reach: ReadonlyMap<string, readonly Block[] | undefined>;
  readonly rowsAt: (path: string) => readonly FileRow[];
  readonly open: Open;
  /** Whether lines, cells or sheets moved. */
  readonly isMoved: boolean;
}

export function compared(model: Model, engine: Basing & Cells, { replayed, reach, rowsAt, open, isMoved }: Against): Compared {
  const { book, paths, resized } = replayed;
  const all = sharedBookOf(model, reach).book;
  // The page may change while this goes on.
  const now = structuredClone({ ...all, sheets: all.sheets.map((sheet) => cutTo(sheet, reach.has(sheet.id) ? reach.get(sheet.id) : [])) });
  const { before, places } = baseline(book, paths, reach, rowsAt, open, engine);
  const pairs = new Map<string, Pair>();
  for (const sheet of now.sheets)
    if (paths.has(sheet.id))
      pairs.set(sheet.id, { now: sheet, before: reach.has(sheet.id) ? before.sheets.find(({ id }) => id === sheet.id) : sheet });

  const around = aroundIn(model);
  const isUnknown = (text: string) => text.startsWith("=") && unknownOf(text, engine, around) !== undefined;
  // The engine moves no reference of a formula that it does not know, and others past the last row: the file's own, moved here, is right.
  const isOnlyMoved = (old: unknown, own: unknown) => {
    if (!isMoved || typeof old !== "string" || typeof own !== "string" || !own.startsWith("=")) return false;
    const fit = withinSheet(own);
    return (fit !== own || isUnknown(own)) && withoutReferences(old) === withoutReferences(fit);
  };
  const changes = new Map<string, string[]>();
  const seeds: Position[] = [];
  for (const [id, pair] of pairs) {
    const own = contentChanges(pair).filter((address) => !isOnlyMoved(pair.before?.cells[address], pair.now.cells[address]));
    changes.set(id, own);
    seeds.push(...[...own, ...(resized.get(paths.get(id)!) ?? [])].map((address) => positionAt(id, address)));
  }
  if (!seeds.length) return { before, now, pairs, places, around, changes, dirty: [], unsure: new Set() };
  const graph = new Dependents(model);
  const unknown = unknownIn(model, engine, around);
  const unsure = new Set([...graph.of(unknown).keys(), ...unknown.map(sheetCell)]);
  return { before, now, pairs, places, around, changes, dirty: [...graph.of(seeds).values()], unsure };
}
