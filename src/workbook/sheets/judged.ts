import { barometer } from "../../vacuum/barometer";
import { ask, type Formula, formula } from "../formula";
import type { Page } from "../page";
import { type Ref, refTo } from "../place";

/**
 * True where a cell holds what no function can read as this setting: judged by a function that takes one line for the whole
 * shop. The built-in form takes words as they come.
 */
export const refuses = (line: Ref): Formula => formula`ISERROR(${ask(barometer, { altitude: 0, shop: line })})`;

/** The same for a cell outside the shop table: a shop line is placed for it in hidden columns, with the verdict beside it. */
export function unreadable(page: Page, setting: string, typed: Ref, at: { readonly row: number; readonly column: number }): Formula {
  const line = refTo(page.sheet.name, at.row, at.column, 1, 2);
  page.put(at.row, at.column, { value: setting, look: "note" });
  page.put(at.row, at.column + 1, { formula: formula`IF(${typed}="","",${typed})`, look: "note" });
  return formula`${page.put(at.row, at.column + 2, { formula: formula`IF(${typed}="",FALSE,${refuses(line)})`, look: "note" })}`;
}
