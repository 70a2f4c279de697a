import type { Outcome } from "../outcome";
import type { FileRow } from "./cells";
import { type Edit, type NewFormula, shows, withEdits } from "./edits";
import { storedOf } from "./storedvalue";

export type { NewFormula } from "./edits";

/** The part of a sheet that values are written into. */
export interface Written {
  readonly xml: string;
  readonly rows: readonly FileRow[];
}

/** A sheet with new values in some of its cells, and new formulas in some of these; all else stays character for character. */
export function valuesWritten(
  { xml, rows }: Written,
  values: ReadonlyMap<string, Outcome | undefined>,
  formulas: ReadonlyMap<string, NewFormula> = new Map(),
): string {
  const there = new Map(rows.flatMap(({ cells }) => cells.map((cell) => [cell.address, cell] as const)));
  const edits = new Map<string, Edit>();
  for (const [address, value] of values) {
    const stored = storedOf(value);
    const cell = there.get(address);
    const formula = formulas.get(address);
    if (formula) edits.set(address, { stored, formula });
    else if (cell ? !shows(cell, stored) : stored.text !== undefined) edits.set(address, { stored });
  }
  return withEdits(xml, edits, rows);
}
