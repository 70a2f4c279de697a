import type { Model } from "@odoo/o-spreadsheet";
import { isHeading, isWrapped, widths } from "../../shared/listsheet";
import { longestSheetName, sheetKey } from "../../shared/xlsx/sheetname";
import { freeName } from "../freename";
import { respelled } from "../quotes";

/** Text that stays text: the format of plain text does not stop the engine from reading an equals sign. */
const inert = (text: string): string => (text.startsWith("=") ? respelled(`="${text.replace(/"/g, '""')}"`) : text);

/** A column so many characters wide, in the engine's pixels. */
const pixels = (characters: number): number => characters * 7 + 5;

const lineHeight = 17;
/** Letters are narrower than the digits that a column width counts. */
const roomy = 1.1;

/** The engine fits rows to their words on the screen alone: in its file they are as high as they are told to be. */
function height(texts: readonly string[], usual: number): number {
  const lines = texts.map((text, column) => Math.ceil(text.length / (roomy * (widths[column] ?? text.length))));
  return usual + lineHeight * (Math.max(1, ...lines) - 1);
}

/** Puts rows of text on a new sheet under a free name; as it is wide, its file prints in landscape, one page across. */
export function addList({ dispatch, getters }: Model, title: string, rows: readonly (readonly string[])[]): void {
  const sheetId = `sheet${Date.now()}`;
  const ids = getters.getSheetIds();
  const taken = new Set(ids.map((id) => sheetKey(getters.getSheetName(id))));
  const name = freeName(title, (one) => taken.has(sheetKey(one)), longestSheetName);
  const cols = Math.max(widths.length, ...rows.map((row) => row.length));
  dispatch("CREATE_SHEET", { sheetId, name, position: ids.length, cols, rows: rows.length + 5 });
  for (const [column, characters] of widths.entries())
    dispatch("RESIZE_COLUMNS_ROWS", { sheetId, dimension: "COL", elements: [column], size: pixels(characters) });
  for (const [row, texts] of rows.entries()) {
    const style = {
      verticalAlign: "top" as const,
      ...(isHeading(texts, row) && { bold: true }),
      ...(isWrapped(texts, row) && { wrapping: "wrap" as const }),
    };
    const size = height(isWrapped(texts, row) ? texts : [], getters.getRowSize(sheetId, row));
    dispatch("RESIZE_COLUMNS_ROWS", { sheetId, dimension: "ROW", elements: [row], size });
    for (const [col, text] of texts.entries())
      if (text !== "") dispatch("UPDATE_CELL", { sheetId, col, row, content: inert(text), format: "@", style });
  }
  dispatch("FREEZE_ROWS", { sheetId, quantity: 1 });
  dispatch("ACTIVATE_SHEET", { sheetIdFrom: getters.getActiveSheetId(), sheetIdTo: sheetId });
}
