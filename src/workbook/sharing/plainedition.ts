import { counted } from "../../../shared/host";
import { put } from "../../../shared/xlsx/package";
import { textOf, workbookOf } from "../../../shared/xlsx/parts";
import { tokensOf } from "../../../shared/xlsx/tokens";
import { unzip } from "../../../shared/xlsx/unzip";
import { type NewFormula, valuesWritten } from "../../../shared/xlsx/values";
import { zipped } from "../../../shared/xlsx/zip";
import { callsOurs } from "../../calls";
import { tableName } from "./baketable";
import { filledBy, grey } from "./greyed";
import { addTable } from "./lookupsheet";
import { heldBy, type OpenSheet, sheetsOf } from "./opened";
import { type NameOf, refOf } from "./parsed";
import { Twins } from "./plaincalls";
import { rewritten } from "./rewritten";
import { valuesOnly } from "./valuesonly";

/** This very workbook for people without the add-in: plain formulas where there are some, a table for the oven, values for the rest. */

export interface Plain {
  readonly file: Uint8Array;
  /** How many cells calculate still, and how many are the values of the day. */
  readonly calculates: number;
  readonly fixed: number;
  readonly words: string;
}

export function plainEdition(file: Uint8Array): Plain {
  const parts = unzip(file);
  const workbook = workbookOf(parts);
  const sheets = sheetsOf(workbook);
  const names = new Map(workbook.names.filter(({ sheet }) => sheet === undefined).map(({ name, text }) => [name.toLowerCase(), text]));
  const nameOf: NameOf = (name) => {
    const text = names.get(name.toLowerCase());
    return text === undefined ? undefined : refOf(tokensOf(text.trim()), "", () => undefined);
  };
  const twins = new Twins(sheets, nameOf);
  const isTaken = sheets.some(({ name }) => name.toLowerCase() === tableName.toLowerCase());
  let calculates = 0;
  const fixed = new Map<OpenSheet, string[]>();
  for (const sheet of sheets) {
    const formulas = new Map<string, NewFormula>();
    for (const { cells } of sheet.rows)
      for (const cell of cells) {
        if (!cell.formula || !callsOurs(cell.formula.text)) continue;
        const looksUp = /PORE[._](?:BAKE|GRAVITY)\(/i.test(cell.formula.text);
        const made = looksUp && isTaken ? undefined : rewritten(cell, sheet, twins);
        for (const [address, one] of made ?? []) formulas.set(address, one);
        if (made) calculates++;
        else fixed.set(sheet, [...(fixed.get(sheet) ?? []), ...filledBy(cell, sheet)]);
      }
    if (!formulas.size) continue;
    const values = new Map(
      [...formulas.keys()].map((address) => [address, sheet.cells.has(address) ? heldBy(sheet.cells.get(address)!) : undefined]),
    );
    const xml = textOf(parts, sheet.path);
    put(parts, sheet.path, valuesWritten({ xml, rows: sheet.rows }, values, formulas));
  }
  if (twins.tables.length || twins.woods) addTable(workbook, twins.tables);
  grey(workbook, fixed);
  const { cells: values, words } = valuesOnly(parts);
  const still = counted(calculates, "formula still calculates", "formulas still calculate");
  const marked = fixed.size ? "; fixed values are gray" : "";
  return { file: zipped(parts), calculates, fixed: values, words: `${calculates ? `${still}; ${words}` : words}${marked}` };
}
