import type { WorkbookData } from "@odoo/o-spreadsheet";

export type SheetData = WorkbookData["sheets"][number];
type Change = (formula: string) => string;
type Format = SheetData["conditionalFormats"][number];
type Rule = Format["rule"];
type Validation = SheetData["dataValidationRules"][number];
type Figure = SheetData["figures"][number];

/** What is typed may be a formula, or a text that looks like one. */
const typed = (content: string, change: Change): string => (content.startsWith("=") ? change(content) : content);

type Limit = { readonly type: string; readonly value?: string };

const limit = <T extends Limit | undefined>(one: T, change: Change): T =>
  one?.type === "formula" && one.value ? { ...one, value: change(one.value) } : one;

function rule(own: Rule, change: Change): Rule {
  switch (own.type) {
    case "CellIsRule":
      return { ...own, values: own.values.map((value) => typed(value, change)) };
    case "ColorScaleRule": {
      const { minimum, midpoint, maximum } = own;
      return { ...own, minimum: limit(minimum, change), midpoint: limit(midpoint, change), maximum: limit(maximum, change) };
    }
    case "IconSetRule": {
      const { upperInflectionPoint: upper, lowerInflectionPoint: lower } = own;
      return { ...own, upperInflectionPoint: limit(upper, change), lowerInflectionPoint: limit(lower, change) };
    }
    case "DataBarRule":
      return own.rangeValues ? { ...own, rangeValues: change(own.rangeValues) } : own;
  }
}

function validation(own: Validation, change: Change): Validation {
  const { type, values } = own.criterion;
  const changed = values.map((value) => (type === "isValueInRange" ? change(value) : typed(value, change)));
  return type === "isValueInList" ? own : { ...own, criterion: { ...own.criterion, values: changed } as Validation["criterion"] };
}

interface Source {
  readonly labelRange?: string;
  readonly dataSets?: readonly { readonly dataRange: string }[];
}

function figure(own: Figure, change: Change): Figure {
  const source: Source | undefined = own.data?.dataSource;
  if (!source) return own;
  const dataSets = source.dataSets?.map((one) => ({ ...one, dataRange: change(one.dataRange) }));
  const labelRange = source.labelRange && change(source.labelRange);
  return { ...own, data: { ...own.data, dataSource: { ...source, dataSets, labelRange } } };
}

/** A sheet with a change made to every formula and every reference in it: of cells, rules, lists and charts. */
export const withFormulas = (sheet: SheetData, change: Change): SheetData => ({
  ...sheet,
  cells: Object.fromEntries(
    Object.entries(sheet.cells).map(([address, content]) => [address, typeof content === "string" ? typed(content, change) : content]),
  ),
  conditionalFormats: sheet.conditionalFormats.map((own) => ({ ...own, rule: rule(own.rule, change) })),
  dataValidationRules: sheet.dataValidationRules.map((own) => validation(own, change)),
  figures: sheet.figures.map((own) => figure(own, change)),
});
