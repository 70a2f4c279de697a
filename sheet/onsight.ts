import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { allowed } from "./guard";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

type Position = OSpreadsheet.CellPosition;
type Zone = OSpreadsheet.Zone;
interface Range {
  readonly sheetId: string;
  readonly zone: Zone;
}

/** The part of the engine's own evaluator that is told here when to work. */
interface Evaluator {
  evaluatedCells: object;
  compilationParams: unknown;
  getters: Getters;
  readonly nextRangesToUpdate: Iterable<Range> & { isEmpty(): boolean; addMany(ranges: Iterable<Range>): void };
  getCellsDependingOn(ranges: readonly Range[]): Iterable<Range>;
  formulaDependencies(): { addDependencies(position: Position, ranges: readonly Range[]): void };
  readonly spreadingRelations: {
    searchFormulaPositionsSpreadingOn(sheetId: string, zone: Zone): readonly Position[];
    getArrayResultZone(anchor: Position): Zone | undefined;
  };
  evaluate(ranges: Iterable<Range>): void;
  evaluateAllCells(): void;
  buildDependencyGraph(): void;
  evaluateFormulaResult(sheetId: string, formula: string, origin: Position): unknown;
  evaluateCompiledFormula(sheetId: string, formula: { readonly rangeDependencies: readonly Range[] }, symbols?: unknown): unknown;
  clearEvaluatedRanges(ranges: Range[]): void;
  computeCell(position: Position): { readonly type: string };
  getEvaluatedCell(position: Position): unknown;
  getSpreadZone(position: Position, options?: object): unknown;
  isArrayFormulaSpillBlocked(position: Position): unknown;
  getEvaluatedPositions(): unknown;
  getEvaluatedPositionsInSheet(sheetId: string): unknown;
}

type Getters = Pick<OSpreadsheet.Getters, "getSheetIds" | "getSheetZone" | "getCell">;

const holds = ({ left, right, top, bottom }: Zone, { col, row }: Pick<Position, "col" | "row">) =>
  col >= left && col <= right && row >= top && row <= bottom;

const overlap = (one: Range, other: Range) =>
  one.sheetId === other.sheetId &&
  one.zone.left <= other.zone.right &&
  other.zone.left <= one.zone.right &&
  one.zone.top <= other.zone.bottom &&
  other.zone.top <= one.zone.bottom;

/** Makes an evaluator calculate a sheet when it is first asked for one of its cells, where it would calculate all sheets at once. */
function onSight(evaluator: Evaluator, getters: Getters): void {
  // The engine's own answers, by their names: those of its class, whatever stands before them here.
  const own = Object.getPrototypeOf(evaluator) as Evaluator;
  /** The sheets that were not calculated as a whole; cells of them may have been, for a formula elsewhere. */
  const unseen = new Set<string>();
  /** Those of them that must be: a formula read a cell that is empty, and may be filled by a formula beside it. */
  const wanted = new Set<string>();
  /** The formulas that are told of changes to what they read: those that were calculated. */
  let linked = new WeakSet<object>();
  let working = false;
  let first = false;

  const calculate = (ranges: Iterable<Range>) => {
    working = true;
    try {
      own.evaluate.call(evaluator, ranges);
    } finally {
      working = false;
    }
  };

  /** What was calculated on the way to other cells stays. */
  const calculateWanted = () => {
    while (wanted.size) {
      const ranges = [...wanted].map((sheetId) => ({ sheetId, zone: getters.getSheetZone(sheetId) }));
      for (const id of wanted) unseen.delete(id);
      wanted.clear();
      first = true;
      calculate(ranges);
    }
  };

  const see = (ids: Iterable<string>) => {
    if (working) return;
    for (const id of ids) if (unseen.has(id)) wanted.add(id);
    if (wanted.size) allowed(calculateWanted);
  };

  /** What changed on an unseen sheet is forgotten, with all that it filled: it is calculated when something asks for it. */
  const forget = ({ sheetId, zone }: Range) => {
    const { spreadingRelations } = evaluator;
    for (const anchor of spreadingRelations.searchFormulaPositionsSpreadingOn(sheetId, zone)) {
      const filled = holds(zone, anchor) && spreadingRelations.getArrayResultZone(anchor);
      if (filled) own.clearEvaluatedRanges.call(evaluator, [{ sheetId, zone: filled }]);
    }
  };

  /** A formula is told of changes to what it reads from its first calculation on, and of those that wait just then. */
  const link = (position: Position, reads: readonly Range[]) => {
    const { nextRangesToUpdate } = evaluator;
    evaluator.formulaDependencies().addDependencies(position, reads);
    if (nextRangesToUpdate.isEmpty()) return;
    const waiting = [...nextRangesToUpdate];
    if (!reads.some((read) => waiting.some((range) => overlap(read, range)))) return;
    const cell = { sheetId: position.sheetId, zone: { left: position.col, right: position.col, top: position.row, bottom: position.row } };
    nextRangesToUpdate.addMany([cell, ...evaluator.getCellsDependingOn([cell])]);
  };

  const instead: Partial<Evaluator> = {
    evaluateAllCells() {
      evaluator.evaluatedCells = new (evaluator.evaluatedCells.constructor as new () => object)();
      unseen.clear();
      for (const id of getters.getSheetIds()) unseen.add(id);
    },
    buildDependencyGraph() {
      own.buildDependencyGraph.call(evaluator);
      linked = new WeakSet();
      evaluator.getters = Object.create(getters, { getSheetIds: { value: () => [] } });
      evaluator.formulaDependencies();
      evaluator.getters = getters;
    },
    evaluate(ranges) {
      calculate(ranges);
      calculateWanted();
    },
    clearEvaluatedRanges(ranges) {
      if (first) {
        first = false;
        return;
      }
      own.clearEvaluatedRanges.call(evaluator, ranges);
      // The evaluator calculates what is left of this list.
      for (let index = ranges.length - 1; index >= 0; index--)
        if (unseen.has(ranges[index].sheetId)) ranges.splice(index, 1).forEach(forget);
    },
    computeCell(position) {
      const formula = getters.getCell(position);
      if (formula?.isFormula && !linked.has(formula)) {
        linked.add(formula);
        link(position, formula.compiledFormula.rangeDependencies);
      }
      const cell = own.computeCell.call(evaluator, position);
      if (cell.type === "empty" && unseen.has(position.sheetId)) wanted.add(position.sheetId);
      return cell;
    },
    evaluateFormulaResult(...formula) {
      const result = own.evaluateFormulaResult.apply(evaluator, formula);
      if (working || !wanted.size) return result;
      calculate([...evaluator.nextRangesToUpdate]);
      calculateWanted();
      return own.evaluateFormulaResult.apply(evaluator, formula);
    },
    evaluateCompiledFormula(sheetId, formula, symbols) {
      // What was made ready for this formula would be lost on the way.
      const { compilationParams } = evaluator;
      see(formula.rangeDependencies.map((range) => range.sheetId));
      evaluator.compilationParams = compilationParams;
      return own.evaluateCompiledFormula.call(evaluator, sheetId, formula, symbols);
    },
    getEvaluatedPositions() {
      see(unseen);
      return own.getEvaluatedPositions.call(evaluator);
    },
    getEvaluatedPositionsInSheet(sheetId) {
      see([sheetId]);
      return own.getEvaluatedPositionsInSheet.call(evaluator, sheetId);
    },
  };
  for (const name of ["getEvaluatedCell", "getSpreadZone", "isArrayFormulaSpillBlocked"] as const)
    instead[name] = (position: Position, ...more: []) => {
      see([position.sheetId]);
      return own[name].call(evaluator, position, ...more);
    };
  Object.assign(evaluator, instead);
}

type Plugin = new (...args: never[]) => { readonly evaluator: Evaluator; readonly getters: Getters };

/** Calculates a sheet that was not in sight yet: any of its cells asks for all of them. */
export function calculateSheet({ getters }: OSpreadsheet.Model, sheetId: string): void {
  getters.getEvaluatedCell({ sheetId, col: 0, row: 0 });
}

export function calculateAll(model: OSpreadsheet.Model): void {
  for (const id of model.getters.getSheetIds()) calculateSheet(model, id);
}

/** The engine calculates every sheet when a workbook opens. Here a sheet is calculated when something asks for one of its cells. */
export function calculateOnSight({ registries: { coreViewsPluginRegistry } }: Engine): void {
  const Evaluation = coreViewsPluginRegistry.get("evaluation") as unknown as Plugin;
  class OnSight extends Evaluation {
    constructor(...args: never[]) {
      super(...args);
      onSight(this.evaluator, this.getters);
    }
  }
  coreViewsPluginRegistry.replace("evaluation", OnSight as never);
}
