import type * as OSpreadsheet from "@odoo/o-spreadsheet";

/** Refuses commands that would change part of a pivot table, which the engine does not know. */

type Command = OSpreadsheet.CoreCommand;
type Zone = OSpreadsheet.Zone;

/** How the keys of the ranges begin in which pivot tables stand. */
export const pivotKey = "pivot ";

export const isPivot = (name: string): boolean => name.startsWith(pivotKey);

/** Why a command is not carried out, to the engine. */
export const pivotInTheWay = "PivotInTheWay";
export const pivotWords =
  "A pivot table is in the way. Insert or delete rows and columns beside it, not through it, and move it as a whole. Nothing was changed.";

type Span = readonly [first: number, last: number];

const apart = (a: Span, b: Span) => a[1] < b[0] || a[0] > b[1];
const holds = (a: Span, b: Span) => a[0] <= b[0] && a[1] >= b[1];

/** Whether a command would tear a pivot table apart, or lay cells over it. */
export function tears(command: Command, sheetId: string, { top, left, bottom, right }: Zone): boolean {
  const [rows, columns]: [Span, Span] = [
    [top, bottom],
    [left, right],
  ];
  switch (command.type) {
    case "ADD_COLUMNS_ROWS": {
      const at = command.position === "before" ? command.base : command.base + 1;
      const [first, last] = command.dimension === "ROW" ? rows : columns;
      return command.sheetId === sheetId && at > first && at <= last;
    }
    case "REMOVE_COLUMNS_ROWS": {
      const [first, last] = command.dimension === "ROW" ? rows : columns;
      const gone = new Set(command.elements.filter((line) => line >= first && line <= last)).size;
      return command.sheetId === sheetId && gone > 0 && gone <= last - first;
    }
    case "MOVE_RANGES": {
      const [from] = command.target;
      const [down, over]: [Span, Span] = [
        [from.top, from.bottom],
        [from.left, from.right],
      ];
      const isWhole = holds(down, rows) && holds(over, columns);
      if (command.sheetId === sheetId && !isWhole && !apart(down, rows) && !apart(over, columns)) return true;
      const landing: [Span, Span] = [
        [command.row, command.row + from.bottom - from.top],
        [command.col, command.col + from.right - from.left],
      ];
      const isOwn = command.sheetId === sheetId && isWhole;
      return command.targetSheetId === sheetId && !isOwn && !apart(landing[0], rows) && !apart(landing[1], columns);
    }
    default:
      return false;
  }
}
