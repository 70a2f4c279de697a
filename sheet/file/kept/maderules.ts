import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { textOf } from "../../../shared/xlsx/parts";
import { childOf, childrenOf, read } from "../../../shared/xlsx/xml";
import { enginesFile, enginesSheet } from "../../enginesfile";
import { solidColors } from "../beside/looks";
import { rankedRules } from "../beside/rules";
import { withValidations } from "../beside/validations";
import { withStoredRules } from "../formulas/inrules";

type Engine = Pick<typeof OSpreadsheet, "Model">;
type SheetData = WorkbookData["sheets"][number];

/** A rule that was made on the page, as the engine's own writer spells it. */
export interface MadeRule {
  readonly text: string;
  /** Its differential format (dxf), for the workbook's list of these. */
  readonly look?: string;
}

export interface Made {
  readonly rules: readonly (MadeRule | undefined)[];
  readonly validations: readonly (MadeRule | undefined)[];
}

type Wanted = Pick<SheetData, "id" | "conditionalFormats" | "dataValidationRules">;

const none: Made = { rules: [], validations: [] };

/** Each of a list as it was written, found by its place; where one is missing, by its cells. */
function inOrder<T extends { readonly ranges: readonly string[] }>(
  list: readonly T[],
  written: readonly { cells: string; made: MadeRule }[],
) {
  if (list.length === written.length) return written.map(({ made }) => made);
  return list.map(({ ranges }) => written.find(({ cells }) => cells === ranges.join(" "))?.made);
}

function madeIn(xml: string, looks: readonly string[], wanted: Wanted): Made {
  const text = withValidations(rankedRules(withStoredRules(xml)), wanted as SheetData, {});
  const root = read(text);
  const rules = childrenOf(root, "conditionalFormatting").flatMap((block) =>
    childrenOf(block, "cfRule").map((rule) => {
      const look = looks[Number(rule.attributes.dxfId)];
      return { cells: block.attributes.sqref, made: { text: text.slice(rule.start, rule.end), look } };
    }),
  );
  const validations = childrenOf(childOf(root, "dataValidations") ?? root, "dataValidation").map((one) => ({
    cells: one.attributes.sqref,
    made: { text: text.slice(one.start, one.end) },
  }));
  return { rules: inOrder(wanted.conditionalFormats, rules), validations: inOrder(wanted.dataValidationRules, validations) };
}

/** Rules of some sheets as files spell them. */
export async function madeRules(wanted: readonly Wanted[], now: WorkbookData, engine: Engine): Promise<(sheetId: string) => Made> {
  const some = wanted.filter(({ conditionalFormats, dataValidationRules }) => conditionalFormats.length || dataValidationRules.length);
  if (!some.length) return () => none;
  const sheets = now.sheets.map(({ id, name, colNumber, rowNumber }) => ({
    conditionalFormats: [],
    dataValidationRules: [],
    ...some.find((one) => one.id === id),
    ...{ id, name, colNumber, rowNumber },
  }));
  // The engine takes plain objects of its own making only.
  const data = JSON.parse(JSON.stringify({ version: now.version, sheets, namedRanges: now.namedRanges })) as object;
  const parts = await enginesFile(data, engine);
  const part = (path: string) => solidColors(textOf(parts, path));
  const styles = part("xl/styles.xml");
  const list = childOf(read(styles), "dxfs");
  const looks = list ? childrenOf(list).map(({ start, end }) => styles.slice(start, end)) : [];
  return (sheetId) => {
    const own = some.find(({ id }) => id === sheetId);
    return own ? madeIn(part(enginesSheet(sheets.findIndex(({ id }) => id === sheetId))), looks, own) : none;
  };
}
