import type { CellPosition, Model, Zone } from "@odoo/o-spreadsheet";
import type { Cells } from "../../shared/columns";
import type { Call, Ended, Look, Selection, SheetHost } from "../../shared/host";
import { sizeOf } from "../../shared/xlsx/address";
import { letters } from "../../shared/xlsx/letters";
import { cellOf } from "../cell";
import { heard } from "../functions";
import { respelled } from "../quotes";
import { isNowhere, placeOf, putBlocks, typedIn } from "./blocks";
import type { Desk } from "./desk";
import { addList } from "./listsheet";

type Getters = Model["getters"];

/** Cells a pane may ask for at once. */
const most = 20_000;

/** What the host needs of the desk. */
export type Shown = Pick<Desk, "model" | "readOnly" | "document" | "setDocument" | "watch" | "replaced">;

/** What a pane does with whole workbooks. */
export type Whole = Pick<SheetHost, "insert" | "open" | "copyWithValues">;

const onlyRead: Ended = {
  done: false,
  words: "This workbook is open in another tab, so it can only be read here: close the other tab first.",
};

/** The embedded sheet as the pane sees it: whatever workbook the desk shows. */
export function pageHost(desk: Shown, whole: Whole, workbook?: () => string): SheetHost {
  const sheet = (): Getters => desk.model.getters;

  const valuesOf = ({ left, right, top, bottom }: Zone, sheetId: string): Cells =>
    Array.from({ length: bottom - top + 1 }, (_, row) =>
      Array.from({ length: right - left + 1 }, (_, column) =>
        cellOf(sheet().getEvaluatedCell({ sheetId, col: left + column, row: top + row })),
      ),
    );

  /** The cell whose formula fills this one: itself, or where a spill starts. */
  const originOf = (position: CellPosition): CellPosition => sheet().getArrayFormulaSpreadingOn(position) ?? position;

  const formulaAt = (position: CellPosition): string => {
    const text = sheet().getCellText(position, { showFormula: true });
    return text.startsWith("=") ? text : "";
  };

  /** Evaluates the formula again to get its calls, so that nothing remembered can be stale. */
  const callsOf = (formula: string, position: CellPosition): readonly Call[] =>
    heard(() => sheet().evaluateFormulaResult(position.sheetId, formula, position)).calls.map(({ contract, cells, answer }) => ({
      name: contract.name,
      cells,
      answer,
    }));

  const addressOf = ({ sheetId }: CellPosition, { left, right, top, bottom }: Zone): string => {
    const first = `${letters(left)}${top + 1}`;
    const last = `${letters(right)}${bottom + 1}`;
    return `${sheet().getSheetName(sheetId)}!${first === last ? first : `${first}:${last}`}`;
  };

  const isFilled = (position: CellPosition): boolean => sheet().getEvaluatedCell(position).type !== "empty";

  /** State that changes with the selection or the selected cell. */
  const signature = (): string => {
    const position = sheet().getActivePosition();
    const { value, message } = sheet().getEvaluatedCell(position);
    return JSON.stringify([position, sheet().getSelectedZone(), formulaAt(originOf(position)), value, message]);
  };

  const rangeOf = (reference: string) => {
    const named = sheet().getNamedRange(reference);
    return named ? named.range : sheet().getRangeFromSheetXC(sheet().getActiveSheetId(), reference);
  };

  /** The cells of a reference, where a pane may ask for them. */
  const askedFor = (reference: string) => {
    const range = rangeOf(reference.trim());
    return isNowhere(range) || sizeOf(range.zone) > most ? undefined : range;
  };

  return {
    name: "page",
    ...(workbook ? { workbook } : {}),

    async selection(reference): Promise<Selection | undefined> {
      const other = reference === undefined ? undefined : rangeOf(reference);
      if (other && isNowhere(other)) return undefined;
      const position = other ? { sheetId: other.sheetId, col: other.zone.left, row: other.zone.top } : sheet().getActivePosition();
      const origin = originOf(position);
      const formula = formulaAt(origin);
      const calls = formula ? callsOf(formula, origin) : [];
      return {
        address: addressOf(position, other?.zone ?? sheet().getSelectedZone()),
        formula,
        row: position.row - origin.row,
        column: position.col - origin.col,
        calls: calls.length ? calls : undefined,
      };
    },

    watch(changed) {
      let last = signature();
      return desk.watch(() => {
        const now = signature();
        if (now === last) return;
        last = now;
        changed();
      });
    },

    replaced: (changed) => desk.replaced(changed),

    async read(reference) {
      const range = askedFor(reference);
      return range && valuesOf(range.zone, range.sheetId);
    },

    async contents(reference) {
      const range = askedFor(reference);
      if (!range) return undefined;
      const { zone, sheetId } = range;
      return { at: placeOf(sheet(), sheetId, zone), cells: typedIn(sheet(), zone, sheetId) };
    },

    put: async (blocks) => (desk.readOnly ? onlyRead : putBlocks(desk.model, blocks, rangeOf)),

    async write(formula: string, { formats, rows }: Look, over: boolean) {
      if (desk.readOnly) return onlyRead;
      const position = sheet().getActivePosition();
      const { sheetId, col, row } = position;
      const size = sheet().getSheetSize(sheetId);
      if (row + rows > size.numberOfRows || col + formats.length > size.numberOfCols)
        return { done: false, words: "The answer does not fit below and beside this cell: choose one farther up or to the left." };
      const cells = Array.from({ length: rows }, (_, down) =>
        formats.map((_, across) => ({ sheetId, col: col + across, row: row + down })),
      ).flat();
      if (!over && isFilled(position)) return { done: false, filled: true, words: `${letters(col)}${row + 1} is not empty.` };
      // Cells filled by the old formula are free, for it is overwritten.
      const blocked = cells.slice(1).find((cell) => isFilled(cell) && !sameCell(originOf(cell), originOf(position)));
      if (blocked)
        return {
          done: false,
          words: `The answer fills ${cells.length} cells, and ${letters(blocked.col)}${blocked.row + 1} is not empty: clear it, or choose a cell with room below and beside it.`,
        };
      const result = desk.model.dispatch("UPDATE_CELL", { sheetId, col, row, content: respelled(formula) });
      return result.isSuccessful ? { done: true } : { done: false, words: "This cell cannot take a formula: it may be locked." };
    },

    async recalculate() {
      desk.model.dispatch("EVALUATE_CELLS");
      return { done: true };
    },

    insert: async (file, sheets, work) => (desk.readOnly ? onlyRead : whole.insert(file, sheets, work)),
    open: whole.open,
    copyWithValues: whole.copyWithValues,
    reenter: async () => ({ done: true, words: "Nothing to fix: on this page the formulas always work." }),

    readPart: async (namespace) => desk.document(namespace),
    async writePart(namespace, xml) {
      if (desk.readOnly) return onlyRead;
      desk.setDocument(namespace, xml);
      return { done: true };
    },

    async printSheet(title, rows) {
      if (desk.readOnly) return onlyRead;
      addList(desk.model, title, rows);
      return { done: true };
    },
  };
}

const sameCell = (a: CellPosition, b: CellPosition): boolean => a.sheetId === b.sheetId && a.col === b.col && a.row === b.row;
