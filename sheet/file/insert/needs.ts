import { rangeKey } from "../../../shared/xlsx/names";
import { engineSheet, sheetKey } from "../../../shared/xlsx/sheetname";
import { Unreadable } from "../../../shared/xlsx/unzip";
import { reworded } from "./rewording";
import { type SheetData, withFormulas } from "./sheetformulas";

/** The keys of the sheets that a formula takes something from, by itself or through a named range. */
function sheetsIn(formula: string, ranges: ReadonlyMap<string, string>): Set<string> {
  const found = new Set<string>();
  const note = (name: string) => {
    found.add(sheetKey(name));
    return undefined;
  };
  const follow = (name: string) => {
    reworded(ranges.get(rangeKey(name)) ?? "", { sheet: note, range: () => undefined });
    return undefined;
  };
  reworded(formula, { sheet: note, range: follow });
  return found;
}

function sourcesOf(sheet: SheetData, ranges: ReadonlyMap<string, string>): Set<string> {
  const found = new Set<string>();
  withFormulas(sheet, (formula) => {
    for (const key of sheetsIn(formula, ranges)) found.add(key);
    return formula;
  });
  return found;
}

/** The sheets of a file with these names, and all that they take numbers from, in the order of the file. */
export function needed(sheets: readonly SheetData[], names: readonly string[], ranges: ReadonlyMap<string, string>): SheetData[] {
  const byKey = new Map(sheets.map((sheet) => [sheetKey(sheet.name), sheet]));
  const found = new Set<SheetData>();
  const waiting = names.map((name) => {
    const sheet = byKey.get(sheetKey(engineSheet(name)));
    if (!sheet) throw new Unreadable(`it has no sheet named ${name}`);
    return sheet;
  });
  for (let sheet = waiting.pop(); sheet; sheet = waiting.pop()) {
    if (found.has(sheet)) continue;
    found.add(sheet);
    for (const key of sourcesOf(sheet, ranges)) if (byKey.has(key)) waiting.push(byKey.get(key)!);
  }
  return sheets.filter((sheet) => found.has(sheet));
}
