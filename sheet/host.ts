import type { CellPosition, Model, Zone } from "@odoo/o-spreadsheet";
import type { Cells } from "../shared/columns";
import type { Call, Ended, Look, Selection, SheetHost } from "../shared/host";
import { cellOf } from "./cell";
import { heard } from "./functions";
import { letters } from "./letters";
import { respelled } from "./quotes";

/** Cells a pane may ask for at once. */
const most = 20_000;

/** What the page keeps beside the workbook: documents by their namespace. */
export interface Parts {
  get(namespace: string): string | undefined;
  set(namespace: string, xml: string): void;
}

const notHere = (what: string): Ended => ({ done: false, words: `This page does not ${what}: download the workbook and open that.` });

/** Text that stays text: the format of plain text does not stop the engine from reading an equals sign. */
const inert = (text: string): string => (text.startsWith("=") ? respelled(`="${text.replace(/"/g, '""')}"`) : text);

/** The embedded sheet as the pane sees it. */
export function pageHost(model: Model, parts: Parts): SheetHost {
  const { getters } = model;

  const valuesOf = ({ left, right, top, bottom }: Zone, sheetId: string): Cells =>
    Array.from({ length: bottom - top + 1 }, (_, row) =>
      Array.from({ length: right - left + 1 }, (_, column) =>
        cellOf(getters.getEvaluatedCell({ sheetId, col: left + column, row: top + row })),
      ),
    );

  /** The cell whose formula fills this one: itself, or where a spill starts. */
  const originOf = (position: CellPosition): CellPosition => getters.getArrayFormulaSpreadingOn(position) ?? position;

  const formulaAt = (position: CellPosition): string => {
    const text = getters.getCellText(position, { showFormula: true });
    return text.startsWith("=") ? text : "";
  };

  /** Asking the formula again tells its calls as of now, so that nothing remembered can be stale. */
  const callsOf = (formula: string, position: CellPosition): readonly Call[] =>
    heard(() => getters.evaluateFormulaResult(position.sheetId, formula, position)).calls.map(({ contract, cells, answer }) => ({
      name: contract.name,
      cells,
      answer,
    }));

  const addressOf = ({ sheetId }: CellPosition, { left, right, top, bottom }: Zone): string => {
    const first = `${letters(left)}${top + 1}`;
    const last = `${letters(right)}${bottom + 1}`;
    return `${getters.getSheetName(sheetId)}!${first === last ? first : `${first}:${last}`}`;
  };

  const isFilled = (position: CellPosition): boolean => getters.getEvaluatedCell(position).type !== "empty";

  /** What a change of selection or of the selected cell changes. */
  const signature = (): string => {
    const position = getters.getActivePosition();
    const { value, message } = getters.getEvaluatedCell(position);
    return JSON.stringify([position, getters.getSelectedZone(), formulaAt(originOf(position)), value, message]);
  };

  const rangeOf = (reference: string) => {
    const named = getters.getNamedRange(reference);
    return named ? named.range : getters.getRangeFromSheetXC(getters.getActiveSheetId(), reference);
  };

  return {
    name: "page",

    async selection(): Promise<Selection> {
      const position = getters.getActivePosition();
      const origin = originOf(position);
      const formula = formulaAt(origin);
      const calls = formula ? callsOf(formula, origin) : [];
      return {
        address: addressOf(position, getters.getSelectedZone()),
        formula,
        row: position.row - origin.row,
        column: position.col - origin.col,
        calls: calls.length ? calls : undefined,
      };
    },

    watch(changed) {
      const owner = {};
      let last = signature();
      model.on("update", owner, () => {
        const now = signature();
        if (now === last) return;
        last = now;
        changed();
      });
      return () => model.off("update", owner);
    },

    async read(reference) {
      const range = rangeOf(reference.trim());
      if (range.invalidXc || range.invalidSheetName) return undefined;
      const { zone, sheetId } = range;
      return (zone.right - zone.left + 1) * (zone.bottom - zone.top + 1) > most ? undefined : valuesOf(zone, sheetId);
    },

    async write(formula: string, { formats, rows }: Look, over: boolean) {
      const position = getters.getActivePosition();
      const { sheetId, col, row } = position;
      const size = getters.getSheetSize(sheetId);
      if (row + rows > size.numberOfRows || col + formats.length > size.numberOfCols)
        return { done: false, words: "The answer does not fit below and beside this cell: choose one further up or to the left." };
      const cells = Array.from({ length: rows }, (_, down) =>
        formats.map((_, across) => ({ sheetId, col: col + across, row: row + down })),
      ).flat();
      if (!over && isFilled(position)) return { done: false, filled: true, words: `${letters(col)}${row + 1} is filled.` };
      // Cells that the old formula fills make way with it.
      const blocked = cells.slice(1).find((cell) => isFilled(cell) && !sameCell(originOf(cell), originOf(position)));
      if (blocked)
        return { done: false, words: `The answer fills ${cells.length} cells, and ${letters(blocked.col)}${blocked.row + 1} is filled.` };
      const result = model.dispatch("UPDATE_CELL", { sheetId, col, row, content: respelled(formula) });
      return result.isSuccessful ? { done: true } : { done: false, words: "This cell takes no formula: it may be locked." };
    },

    async recalculate() {
      model.dispatch("EVALUATE_CELLS");
      return { done: true };
    },

    insert: async () => notHere("insert sheets"),
    open: async () => notHere("open files"),
    copyWithValues: async () => notHere("write files"),
    reenter: async () => ({ done: true, words: "Nothing to mend: on this page the formulas are always known." }),

    readPart: async (namespace) => parts.get(namespace),
    async writePart(namespace, xml) {
      parts.set(namespace, xml);
      return { done: true };
    },

    async printSheet(title, rows) {
      const sheetId = `sheet${Date.now()}`;
      const taken = new Set(getters.getSheetIds().map((id) => getters.getSheetName(id)));
      let name = title;
      for (let n = 2; taken.has(name); n++) name = `${title} ${n}`;
      const size = { cols: Math.max(1, ...rows.map((row) => row.length)), rows: rows.length + 5 };
      model.dispatch("CREATE_SHEET", { sheetId, name, position: getters.getSheetIds().length, ...size });
      rows.forEach((row, down) => {
        row.forEach((content, across) => {
          model.dispatch("UPDATE_CELL", { sheetId, col: across, row: down, content: inert(content), format: "@" });
        });
      });
      model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: getters.getActiveSheetId(), sheetIdTo: sheetId });
      return { done: true };
    },
  };
}

const sameCell = (a: CellPosition, b: CellPosition): boolean => a.sheetId === b.sheetId && a.col === b.col && a.row === b.row;
