import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { rowsOf } from "../../../shared/xlsx/cells";
import { quietly } from "../../quietly";

type Engine = Pick<typeof OSpreadsheet, "Model">;

/** Formulas as the engine's own writer spells them: it knows which functions are new to files. */
export async function spelling(
  formulas: ReadonlyMap<string, ReadonlyMap<string, string>>,
  now: WorkbookData,
  { Model }: Engine,
): Promise<(sheetId: string, address: string, typed: string) => string> {
  if (![...formulas.values()].some((own) => own.size)) return (_, __, typed) => typed.slice(1);
  const sheets = now.sheets.map(({ id, name, colNumber, rowNumber }) => ({
    id,
    name,
    colNumber,
    rowNumber,
    cells: Object.fromEntries(formulas.get(id) ?? []),
  }));
  const book = quietly(() => new Model({ version: now.version, sheets, namedRanges: { ...now.namedRanges } } as object));
  const { files } = await book.exportXLSX();
  const found = new Map<string, string>();
  sheets.forEach(({ id }, i) => {
    const file = files.find(({ path }) => path === `xl/worksheets/sheet${i}.xml`);
    for (const { cells } of file && "content" in file ? rowsOf(file.content, []) : [])
      for (const { address, formula } of cells) if (formula) found.set(`${id} ${address}`, formula.text);
  });
  return (sheetId, address, typed) => found.get(`${sheetId} ${address}`) ?? typed.slice(1);
}
