import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { rangeKey } from "../../../shared/xlsx/names";
import { engineSheet } from "../../../shared/xlsx/sheetname";

/** The parts of o-spreadsheet that read formulas: a module in Node, a global in the page. */
export type Reader = Pick<typeof OSpreadsheet, "iterateAstNodes" | "parse" | "registries">;
type Node = ReturnType<Reader["parse"]>;

/** What else a formula may refer to. */
export interface Around {
  readonly names: ReadonlySet<string>;
  readonly sheets: ReadonlySet<string>;
}

function unknownIn(node: Node, { registries }: Reader, { names, sheets }: Around): string | undefined {
  if (node.type === "FUNCALL")
    return registries.functionRegistry.contains(node.value.toUpperCase()) ? undefined : `the function ${node.value.toUpperCase()}`;
  if (node.type === "SYMBOL") return names.has(rangeKey(node.value)) ? undefined : `the name ${node.value}`;
  if (node.type !== "REFERENCE" || !node.value.includes("!")) return undefined;
  const sheet = node.value.slice(0, node.value.lastIndexOf("!")).replace(/^'|'$/g, "").replace(/''/g, "'");
  return sheets.has(sheet.toLowerCase()) ? undefined : `the reference ${node.value}`;
}

/** What of a formula the engine does not know, in words; undefined where it knows all of it. */
export function unknownOf(formula: string, reader: Reader, around: Around): string | undefined {
  try {
    for (const node of reader.iterateAstNodes(reader.parse(formula))) {
      const unknown = unknownIn(node, reader, around);
      if (unknown) return unknown;
    }
    return undefined;
  } catch {
    return "this way of writing a formula";
  }
}

/** What the formulas of the workbook on the page may refer to. */
export const aroundIn = ({ getters }: OSpreadsheet.Model): Around => ({
  names: new Set(getters.getNamedRanges().map(({ name }) => rangeKey(name))),
  sheets: new Set(getters.getSheetIds().map((id) => getters.getSheetName(id).toLowerCase())),
});

/** What those of a file may refer to. */
export const aroundOf = ({ sheets, names }: { sheets: readonly { name: string }[]; names: Readonly<Record<string, string>> }): Around => ({
  names: new Set(Object.keys(names).map(rangeKey)),
  sheets: new Set(sheets.map(({ name }) => engineSheet(name).toLowerCase())),
});
