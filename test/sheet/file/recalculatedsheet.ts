import { recalculated } from "../../../sheet/file/recalculated";
import { cellIn, textsOf, workbookOf } from "./workbooks";

export const first = "xl/worksheets/sheet1.xml";

/** What one sheet with these rows becomes. */
export function sheetOf(rows: string, more: Omit<Parameters<typeof workbookOf>[0], "sheets"> = {}) {
  const result = recalculated(workbookOf({ sheets: { Costs: rows }, ...more }));
  const xml = textsOf(result.file)[first];
  return { ...result, xml, cell: (address: string) => cellIn(xml, address) };
}
