import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import { type Around, type Reader, unknownOf } from "../formulas/known";
import { sheetCell } from "./place";

type Range = OSpreadsheet.Range;
type Position = OSpreadsheet.CellPosition;

interface Formula {
  readonly position: Position;
  readonly ranges: readonly Range[];
  /** It may take something from anywhere. */
  readonly roams: boolean;
}

/** Functions that build references at run time. */
const roaming = /\b(?:INDIRECT|OFFSET)\s*\(/i;

function formulasOf({ getters }: Model): Formula[] {
  return getters.getSheetIds().flatMap((sheetId) =>
    getters.getCells(sheetId).flatMap((cell) => {
      if (!cell.isFormula) return [];
      const { compiledFormula } = cell;
      const named = compiledFormula.getNamedRangesInFormula(getters).map(({ range }) => range);
      const roams = roaming.test(compiledFormula.normalizedFormula);
      return [{ position: getters.getCellPosition(cell.id), ranges: [...compiledFormula.rangeDependencies, ...named], roams }];
    }),
  );
}

/** Formulas that rest on what the engine does not know; those that differ in their cells alone are asked once. */
export function unknownIn({ getters }: Model, engine: Reader, around: Around): Position[] {
  const known = new Map<string, boolean>();
  return getters.getSheetIds().flatMap((sheetId) =>
    getters.getCells(sheetId).flatMap((cell) => {
      if (!cell.isFormula) return [];
      const { normalizedFormula, rangeDependencies } = cell.compiledFormula;
      const isPlain = rangeDependencies.every(({ invalidXc, invalidSheetName }) => !invalidXc && !invalidSheetName);
      let unknown = isPlain ? known.get(normalizedFormula) : undefined;
      if (unknown === undefined) {
        unknown = unknownOf(cell.compiledFormula.toFormulaString(getters), engine, around) !== undefined;
        if (isPlain) known.set(normalizedFormula, unknown);
      }
      return unknown ? [getters.getCellPosition(cell.id)] : [];
    }),
  );
}

/** Cells by sheet and column, so that a range finds those in it without looking at all. */
class Marked {
  private readonly columns = new Map<string, Map<number, Set<number>>>();

  add({ sheetId, col, row }: Position): void {
    const sheet = this.columns.get(sheetId) ?? new Map<number, Set<number>>();
    this.columns.set(sheetId, sheet);
    const rows = sheet.get(col) ?? new Set<number>();
    sheet.set(col, rows);
    rows.add(row);
  }

  has({ sheetId, zone }: Range): boolean {
    const sheet = this.columns.get(sheetId);
    if (!sheet) return false;
    for (const [col, rows] of sheet) {
      if (col < zone.left || col > zone.right) continue;
      if (zone.bottom - zone.top < rows.size) {
        for (let row = zone.top; row <= zone.bottom; row++) if (rows.has(row)) return true;
      } else for (const row of rows) if (row >= zone.top && row <= zone.bottom) return true;
    }
    return false;
  }
}

const passes = 60;

/** The graph of a workbook's formulas. */
export class Dependents {
  private readonly formulas: readonly Formula[];

  constructor(private readonly model: Model) {
    this.formulas = formulasOf(model);
  }

  /** Formulas that take something from these cells, directly or by others; with those among them that are formulas themselves. */
  of(cells: readonly Position[]): Map<string, Position> {
    const { getters } = this.model;
    const found = new Map<string, Position>();
    if (!cells.length) return found;
    const marked = new Marked();
    for (const cell of cells) marked.add(cell);
    const take = ({ position }: Formula) => {
      found.set(sheetCell(position), position);
      marked.add(position);
      const zone = getters.getSpreadZone(position);
      if (!zone) return;
      for (let row = zone.top; row <= zone.bottom; row++)
        for (let col = zone.left; col <= zone.right; col++) marked.add({ sheetId: position.sheetId, col, row });
    };
    const own = new Set(cells.map(sheetCell));
    let waiting = this.formulas.filter((formula) => {
      if (!own.has(sheetCell(formula.position)) && !formula.roams) return true;
      take(formula);
      return false;
    });
    for (let pass = 0, before = -1; waiting.length !== before; pass++) {
      before = waiting.length;
      // After this many passes the formulas that still wait are taken as affected.
      waiting = waiting.filter((formula) => {
        if (pass < passes && !formula.ranges.some((range) => marked.has(range))) return true;
        take(formula);
        return false;
      });
    }
    return found;
  }
}
