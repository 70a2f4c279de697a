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
import { callsOurs } from "../../src/calls";
import { shownBy } from "../cell";
import { calculated, keyOf, placed } from "./calculated";
import { contents, type FormulaCell } from "./contents";

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
  if (isNarrow) return "it gives several values, and its cell shows the first: enter it again as an array formula";
  const zone = getters.getSpreadZone(placed(sheet, formula));
  const block = formula.block ?? blockAt(formula);
  return formula.dynamic && zone && sizeOf(zone) > sizeOf(block)
    ? `it fills ${rangeOf(zone)}, and the file has room for ${rangeOf(block)}: enter it again`
    : undefined;
}

/** Calculates a workbook anew and writes what its formulas give, and nothing else. */
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
    const formulas = new Map<string, NewFormula>();
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
      // Without its mark a program takes the call for one that gives one value.
      if (ours && !narrow.has(where) && (formula.kind === "plain" || formula.kind === "shared"))
        formulas.set(formula.address, { formula: formula.filed, block: blockAt(formula), mark: dynamicMark(parts, workbook.path) });
      if (errors.length > before) faulty++;
      const words = misfit(book.getters, sheet.name, formula, narrow.has(where));
      if (words) cut.push({ where, words });
    }
    if (values.size) parts.set(sheet.part.path, encoded(valuesWritten(sheet, values, formulas)));
  }
  return { file: zipped(parts), found, faulty, errors, otherErrors, left: kept, cut };
}
