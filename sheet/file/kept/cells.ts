import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import { addressOf, atOf, type Block, blockAt, cellsOf } from "../../../shared/xlsx/address";
import type { FileCell, FileRow } from "../../../shared/xlsx/cells";
import { type Edit, shows } from "../../../shared/xlsx/edits";
import { firstsOf, fullFormula } from "../../../shared/xlsx/moved/cells";
import { withEnds } from "../../../shared/xlsx/openends";
import { type StoredValue, storedOf } from "../../../shared/xlsx/storedvalue";
import { asStored, asTyped, callsOurs } from "../../../src/calls";
import { shownBy } from "../../cell";
import { type Around, type Reader, unknownOf } from "../formulas/known";
import { needsArray } from "../formulas/many";
import { fileFormula, untouchedFormula, type Writer } from "../formulas/outward";

export type Engine = Reader & Writer;

type Position = OSpreadsheet.CellPosition;

/** A sheet of the page and the part that it is written into. */
export interface Sheet {
  readonly id: string;
  readonly rows: readonly FileRow[];
}

export interface CellsOf {
  readonly model: Model;
  readonly engine: Engine;
  readonly around: Around;
  /** How the engine's own writer spells a formula. */
  readonly written: (sheetId: string, address: string, typed: string) => string;
  /** Formulas that rest on what the engine does not know. */
  readonly unsure: ReadonlySet<string>;
  readonly mark: () => number;
}

const nothingStored: StoredValue = { type: undefined, text: undefined };

/** Typed text is stored in its cell as an inline string. */
const typedValue = (value: ReturnType<typeof shownBy>): StoredValue => {
  const stored = storedOf(value);
  return stored.type === "str" ? { ...stored, type: "inlineStr" } : stored;
};

export const positionAt = (sheetId: string, address: string): Position => {
  const { row, column } = atOf(address);
  return { sheetId, row, col: column };
};

export const formulaAt = ({ getters }: Model, position: Position): string | undefined => {
  const cell = getters.getCell(position);
  return cell?.isFormula ? withEnds(cell.compiledFormula.toFormulaString(getters)) : undefined;
};

/** Cells that the file fills from a formula of another; and every cell of the file by its address. */
function fileCells(rows: readonly FileRow[]): { readonly at: ReadonlyMap<string, FileCell>; readonly blocks: ReadonlyMap<string, Block> } {
  const at = new Map<string, FileCell>();
  const blocks = new Map<string, Block>();
  for (const { cells } of rows)
    for (const cell of cells) {
      at.set(cell.address, cell);
      if (cell.formula?.kind === "array" && cell.formula.block) blocks.set(cell.address, cell.formula.block);
    }
  return { at, blocks };
}

/** The edits that bring cells of a file to what the page has: `changed` are those with another content, `dirty` those whose result may be another. */
export function cellEdits({ id, rows }: Sheet, changed: readonly string[], dirty: readonly Position[], of: CellsOf): Map<string, Edit> {
  const { model, engine, around, unsure } = of;
  const { getters } = model;
  const { at, blocks } = fileCells(rows);
  const edits = new Map<string, Edit>();
  const set = (address: string, edit: Edit) => edits.set(address, { ...edits.get(address), ...edit });
  const position = (address: string) => positionAt(id, address);
  const shown = (address: string) => shownBy(getters.getEvaluatedCell(position(address)));
  const setStored = (address: string, stored: StoredValue) => {
    const file = at.get(address);
    if (file ? !shows(file, stored) : stored.text !== undefined) set(address, { stored });
  };
  /** Values of the cells that a formula fills, and none where it filled one before. */
  const fill = (address: string, zone: Block | undefined) => {
    const filled = new Set((zone ? cellsOf(zone) : [atOf(address)]).map(addressOf));
    for (const one of filled) setStored(one, storedOf(shown(one)));
    const before = blocks.get(address);
    for (const one of before ? cellsOf(before).map(addressOf) : [])
      if (!filled.has(one) && getters.getCell(position(one)) === undefined) setStored(one, typedValue(shown(one) || undefined));
  };

  for (const address of changed) {
    const here = position(address);
    const typed = formulaAt(model, here);
    if (typed === undefined) {
      const content = (getters.getCell(here) as { readonly content?: string } | undefined)?.content ?? "";
      const spilled = content === "" && getters.getArrayFormulaSpreadingOn(here);
      const value = content === "" && !spilled ? undefined : shown(address);
      set(address, { stored: value === undefined ? nothingStored : typedValue(value), formula: null });
      const old = blocks.get(address);
      for (const one of old ? cellsOf(old).map(addressOf) : [])
        if (one !== address && !getters.getCell(position(one))) setStored(one, nothingStored);
      continue;
    }
    if (unknownOf(typed, engine, around)) {
      set(address, { formula: { formula: untouchedFormula(typed) }, stored: nothingStored, again: true });
      continue;
    }
    const zone = getters.getSpreadZone(here);
    const block = zone ?? (callsOurs(typed) || needsArray(typed, engine, getters) ? blockAt(atOf(address)) : undefined);
    const formula = fileFormula(typed, of.written(id, address, typed), engine);
    set(address, { formula: block ? { formula, block, mark: of.mark() } : { formula }, stored: storedOf(shown(address)) });
    fill(address, zone);
  }

  const isChanged = new Set(changed);
  const firsts = firstsOf(rows);
  for (const here of dirty) {
    const address = addressOf({ row: here.row, column: here.col });
    if (isChanged.has(address)) continue;
    const file = at.get(address);
    if (!file?.formula || file.formula.kind === "other") continue;
    if (unsure.has(`${here.sheetId} ${here.col} ${here.row}`)) {
      // It shows what was right before: a program that knows the formula works it out.
      if (file.shown) set(address, { stored: nothingStored, again: true });
      continue;
    }
    const zone = getters.getSpreadZone(here);
    if (file.formula.kind !== "array" && callsOurs(fullFormula(file, firsts))) {
      // As Excel saves it: as a plain formula it would be asked for one value alone.
      const formula = asStored(asTyped(fullFormula(file, firsts)));
      set(address, { formula: { formula, block: zone ?? blockAt(file), mark: of.mark() }, stored: storedOf(shown(address)) });
      fill(address, zone);
      continue;
    }
    const room = file.formula.block ?? blockAt(file);
    if (zone && file.formula.kind === "array" && (zone.bottom !== room.bottom || zone.right !== room.right) && file.formula.dynamic)
      set(address, { formula: { formula: file.formula.text, block: zone, mark: of.mark() }, stored: storedOf(shown(address)) });
    fill(address, file.formula.kind === "array" ? (file.formula.dynamic ? zone : room) : undefined);
  }
  promote(rows, edits);
  return edits;
}

/** Shared formulas: where the first cell's text goes, the others get theirs in full. */
function promote(rows: readonly FileRow[], edits: Map<string, Edit>): void {
  const firsts = firstsOf(rows);
  const gone = new Set([...firsts].filter(([, first]) => edits.get(first.address)?.formula !== undefined).map(([shared]) => shared));
  if (!gone.size) return;
  for (const { cells } of rows)
    for (const cell of cells) {
      const own = edits.get(cell.address);
      if (cell.formula?.kind !== "shared" || !gone.has(cell.formula.shared ?? "") || own?.formula !== undefined) continue;
      edits.set(cell.address, { ...own, formula: { formula: fullFormula(cell, firsts) } });
    }
}
