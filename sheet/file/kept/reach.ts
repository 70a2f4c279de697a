import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { addressOf, atOf, type Block, blockAt, blockOf, cellsOf, isIn, rangeOf, sizeOf } from "../../../shared/xlsx/address";
import type { SheetData } from "./difference";

type Command = OSpreadsheet.CoreCommand;

/** The cells that the recorded commands may have changed, so that saving need not compare the rest. */

/** All of a sheet. */
export const whole = "*";

/** A border is the neighbor's too. */
export const wider = ({ top, left, bottom, right }: Block): Block => ({
  top: Math.max(0, top - 1),
  left: Math.max(0, left - 1),
  bottom: bottom + 1,
  right: right + 1,
});

/** These change no cell of any sheet. */
const harmless = new Set<Command["type"]>([
  "UPDATE_CELL_POSITION",
  "MOVE_SHEET",
  "UPDATE_LOCALE",
  "CREATE_TABLE_STYLE",
  "REMOVE_TABLE_STYLE",
]);
/** These change what is said of a sheet, and none of its cells. */
const around = new Set<Command["type"]>([
  ...(["RESIZE_COLUMNS_ROWS", "HIDE_COLUMNS_ROWS", "UNHIDE_COLUMNS_ROWS", "SET_GRID_LINES_VISIBILITY", "COLOR_SHEET"] as const),
  ...(["UNFREEZE_COLUMNS", "UNFREEZE_ROWS", "FREEZE_COLUMNS", "FREEZE_ROWS", "UNFREEZE_COLUMNS_ROWS"] as const),
  ...(["HIDE_SHEET", "SHOW_SHEET", "GROUP_HEADERS", "UNGROUP_HEADERS", "UNFOLD_HEADER_GROUP", "FOLD_HEADER_GROUP"] as const),
  ...(["FOLD_ALL_HEADER_GROUPS", "UNFOLD_ALL_HEADER_GROUPS", "UNFOLD_HEADER_GROUPS_IN_ZONE", "FOLD_HEADER_GROUPS_IN_ZONE"] as const),
  ...(["ADD_CONDITIONAL_FORMAT", "REMOVE_CONDITIONAL_FORMAT", "CHANGE_CONDITIONAL_FORMAT_PRIORITY"] as const),
  ...(["ADD_DATA_VALIDATION_RULE", "REMOVE_DATA_VALIDATION_RULE"] as const),
]);

/** The cells that a command may change, by sheet, each range once; undefined where that is not known. */
export function reachOf(command: Command): Readonly<Record<string, readonly string[]>> | undefined {
  if (harmless.has(command.type)) return {};
  if (!("sheetId" in command)) return undefined;
  const { sheetId } = command;
  if (around.has(command.type)) return { [sheetId]: [] };
  switch (command.type) {
    case "UPDATE_CELL":
    case "CLEAR_CELL":
      return { [sheetId]: [addressOf({ row: command.row, column: command.col })] };
    case "CLEAR_CELLS":
    case "DELETE_CONTENT":
    case "SET_FORMATTING":
      return { [sheetId]: command.target.map(rangeOf) };
    case "CLEAR_FORMATTING":
    case "SET_BORDERS_ON_TARGET":
      return { [sheetId]: command.target.map((zone) => rangeOf(wider(zone))) };
    case "SET_BORDER":
      return { [sheetId]: [rangeOf(wider(blockAt({ row: command.row, column: command.col })))] };
    case "SET_ZONE_BORDERS":
    case "ADD_MERGE":
    case "REMOVE_MERGE":
      return { [sheetId]: [whole] };
    default:
      return undefined;
  }
}

/** More places than these are as good as the whole sheet. */
const many = 2_000;

/** Ranges as blocks; undefined for all of a sheet. */
export const blocksOf = (ranges: readonly string[]): readonly Block[] | undefined =>
  ranges.length > many || ranges.includes(whole) ? undefined : ranges.map(blockOf);

const common = (a: Block, b: Block): Block | undefined => {
  const [top, left] = [Math.max(a.top, b.top), Math.max(a.left, b.left)];
  const [bottom, right] = [Math.min(a.bottom, b.bottom), Math.min(a.right, b.right)];
  return top <= bottom && left <= right ? { top, left, bottom, right } : undefined;
};

/** Cells that are merged are one: what is done to one of them reaches all. */
export const withMerged = (blocks: readonly Block[], merged: readonly Block[]): readonly Block[] => [
  ...blocks,
  ...merged.filter((one) => blocks.some((block) => common(wider(block), one))),
];

type Zones = Readonly<Record<string, number>>;

/** Zones as far as they lie in some blocks. */
function zonesIn(zones: Zones = {}, blocks: readonly Block[]): Record<string, number> {
  const found: Record<string, number> = {};
  for (const [zone, number] of Object.entries(zones)) {
    const own = blockOf(zone);
    for (const block of blocks) {
      const part = common(own, block);
      if (!part) continue;
      // A later zone lies on those before it.
      delete found[rangeOf(part)];
      found[rangeOf(part)] = number;
    }
  }
  return found;
}

function cellsIn(cells: SheetData["cells"], blocks: readonly Block[]): SheetData["cells"] {
  const few = blocks.reduce((sum, block) => sum + sizeOf(block), 0) < 10_000;
  const addresses = few
    ? blocks.flatMap((block) => cellsOf(block).map(addressOf)).filter((address) => cells[address] !== undefined)
    : Object.keys(cells).filter((address) => blocks.some((block) => isIn(block, atOf(address))));
  return Object.fromEntries(addresses.map((address) => [address, cells[address]]));
}

/** A sheet with the cells of some blocks alone. */
export const cutTo = (sheet: SheetData, blocks: readonly Block[] | undefined): SheetData =>
  blocks
    ? {
        ...sheet,
        cells: cellsIn(sheet.cells, blocks),
        styles: zonesIn(sheet.styles, blocks),
        formats: zonesIn(sheet.formats, blocks),
        borders: zonesIn(sheet.borders, blocks),
      }
    : sheet;
