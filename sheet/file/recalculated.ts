import type { Model } from "@odoo/o-spreadsheet";
import { isFault, type Outcome } from "../../shared/outcome";
import { addressOf, blockAt, cellsOf, rangeOf, sizeOf } from "../../shared/xlsx/address";
import type { NewFormula } from "../../shared/xlsx/edits";
import { dynamicMark } from "../../shared/xlsx/metadata";
import { workbookOf } from "../../shared/xlsx/parts";
import { unzip } from "../../shared/xlsx/unzip";
import { valuesWritten } from "../../shared/xlsx/values";
import { encoded } from "../../shared/xlsx/xml";
import { zipped } from "../../shared/xlsx/zip";
import { asStored, callsOurs } from "../../src/calls";
import { shownBy } from "../cell";
import { calculated, keyOf, placed } from "./calculated";
import { type Contents, contents, type FormulaCell } from "./contents/contents";

/** Something to tell of a cell. */
export interface Note {
  /** `Costs!D5`. */
  readonly where: string;
  readonly words: string;
}

export interface Recalculated {
  readonly file: Uint8Array;
  /** How many formulas call our functions. */
  readonly found: number;
  /** How many of them give an error, in one cell or in several. */
  readonly faulty: number;
  /** Cells of such formulas that show an error. */
  readonly errors: readonly Note[];
  /** Errors of all other formulas that the file did not show before. */
  readonly otherErrors: readonly Note[];
  /** Formulas that the engine does not know: they keep what they showed. */
  readonly left: readonly Note[];
  /** Formulas whose answer is larger than the room that the file gives it. */
  readonly cut: readonly Note[];
}

/** What each cell of a formula shows. */
function outcomesOf(
  getters: Model["getters"],
  sheet: string,
  { block, ...at }: FormulaCell,
): [address: string, outcome: Outcome | undefined][] {
  return cellsOf(block ?? blockAt(at)).map((one) => [addressOf(one), shownBy(getters.getEvaluatedCell(placed(sheet, one)))]);
}

/** How the answer of a formula does not fit where it stands; undefined where it does. */
function misfit(getters: Model["getters"], sheet: string, formula: FormulaCell, isNarrow: boolean): string | undefined {
  if (isNarrow) return "it gives several values, and its cell shows only the first: enter it again as an array formula";
  const zone = getters.getSpreadZone(placed(sheet, formula));
  const block = formula.block ?? blockAt(formula);
  return formula.dynamic && zone && sizeOf(zone) > sizeOf(block)
    ? `it fills ${rangeOf(zone)}, and the file has room for ${rangeOf(block)}: enter it again`
    : undefined;
}

/**
 * Plain formulas of ours as Excel itself writes them: else it shows `=@PORE.FILL(…)`, and takes one value of a column. One that gives
 * several values stays as it is, for they would need room.
 */
function asExcelWrites(
  { name, formulas }: Contents,
  left: ReadonlyMap<string, string>,
  narrow: ReadonlySet<string>,
  markOf: () => number | undefined,
): ReadonlyMap<string, NewFormula> {
  const plain = formulas.filter(({ kind, text }) => (kind === "plain" || kind === "shared") && callsOurs(text));
  // Formulas that share one text are taken apart together or not at all.
  const isKept = plain.some((formula) => formula.kind === "shared" && left.has(keyOf(name, formula)));
  const ready = plain.filter((formula) => !left.has(keyOf(name, formula)) && !(isKept && formula.kind === "shared"));
  const mark = ready.length ? markOf() : undefined;
  if (mark === undefined) return new Map();
  return new Map(
    ready.flatMap(({ address, filed, kind, ...at }): [string, NewFormula][] => {
      if (!narrow.has(keyOf(name, { address }))) return [[address, { formula: asStored(filed), block: blockAt(at), mark }]];
      return kind === "shared" ? [[address, { formula: filed }]] : [];
    }),
  );
}

/** Calculates a workbook anew and writes what its formulas give, and nothing else but Excel's marks on formulas of ours. */
export function recalculated(bytes: Uint8Array): Recalculated {
  const workbook = workbookOf(unzip(bytes));
  const read = contents(workbook);
  const { book, left, narrow } = calculated(read);
  const parts = new Map(workbook.parts);
  const [errors, otherErrors, kept, cut]: Note[][] = [[], [], [], []];
  let found = 0;
  let faulty = 0;
  for (const sheet of read.sheets) {
    const values = new Map<string, Outcome | undefined>();
    for (const formula of sheet.formulas) {
      const where = keyOf(sheet.name, formula);
      const ours = callsOurs(formula.text);
      if (ours) found++;
      const reason = left.get(where);
      if (reason !== undefined) {
        kept.push({ where, words: reason });
        continue;
      }
      const before = errors.length;
      for (const [address, outcome] of outcomesOf(book.getters, sheet.name, formula)) {
        values.set(address, outcome);
        if (!isFault(outcome)) continue;
        const note = { where: `${sheet.name}!${address}`, words: `${outcome.error} ${outcome.message}` };
        if (ours) errors.push(note);
        else if (formula.shown !== outcome.error) otherErrors.push(note);
      }
      if (errors.length > before) faulty++;
      const words = misfit(book.getters, sheet.name, formula, narrow.has(where));
      if (words) cut.push({ where, words });
    }
    const formulas = asExcelWrites(sheet, left, narrow, () => dynamicMark(parts, workbook.path));
    if (values.size) parts.set(sheet.part.path, encoded(valuesWritten(sheet, values, formulas)));
  }
  return { file: zipped(parts), found, faulty, errors, otherErrors, left: kept, cut };
}
