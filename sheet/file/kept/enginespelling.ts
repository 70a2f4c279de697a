import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { rowsOf } from "../../../shared/xlsx/cells";
import { textOf } from "../../../shared/xlsx/parts";
import { enginesFile, enginesSheet } from "../../enginesfile";

type Engine = Pick<typeof OSpreadsheet, "Model">;

/** Formulas as the engine's own writer spells them: it knows which functions need the prefix _xlfn. */
export async function spelling(
  formulas: ReadonlyMap<string, ReadonlyMap<string, string>>,
  now: WorkbookData,
  engine: Engine,
): Promise<(sheetId: string, address: string, typed: string) => string> {
  if (![...formulas.values()].some((own) => own.size)) return (_, __, typed) => typed.slice(1);
  const sheets = now.sheets.map(({ id, name, colNumber, rowNumber }) => ({
    id,
    name,
    colNumber,
    rowNumber,
    cells: Object.fromEntries(formulas.get(id) ?? []),
  }));
  const parts = await enginesFile({ version: now.version, sheets, namedRanges: { ...now.namedRanges } }, engine);
  const found = new Map<string, string>();
  for (const [i, { id }] of sheets.entries())
    for (const { cells } of rowsOf(textOf(parts, enginesSheet(i)), []))
      for (const { address, formula } of cells) if (formula) found.set(`${id} ${address}`, formula.text);
  return (sheetId, address, typed) => found.get(`${sheetId} ${address}`) ?? typed.slice(1);
}
