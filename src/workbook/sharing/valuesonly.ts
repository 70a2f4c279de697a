import { counted } from "../../../shared/host";
import { rowsOf } from "../../../shared/xlsx/cells";
import { type Edit, withEdits } from "../../../shared/xlsx/edits";
import { dropParts, edit } from "../../../shared/xlsx/package";
import { relationsOf, sheetPaths, textOf } from "../../../shared/xlsx/parts";
import type { Parts } from "../../../shared/xlsx/unzip";
import { callsOurs } from "../../calls";
import { withoutOurColumns, withoutOurRules } from "./withoutrules";

/** What became of a workbook in which PORE formulas are their values. */
export interface Valued {
  readonly cells: number;
  readonly rules: number;
  /** For a person to know. */
  readonly words: string;
}

function told(cells: number, rules: number): string {
  const values = counted(cells, "PORE cell is its value", "PORE cells are their values");
  return rules ? `${values}; ${counted(rules, "rule or list that calls PORE is", "rules and lists that call PORE are")} left out` : values;
}

/** The cells of a sheet that lose their formula and keep its value. One that is filled down stands in full in its first cell alone. */
function oursIn(sheet: string): { readonly edits: ReadonlyMap<string, Edit>; readonly xml: string } {
  const rows = rowsOf(sheet, []);
  const formulas = rows.flatMap(({ cells }) => cells.flatMap(({ address, formula }) => (formula ? [{ address, formula }] : [])));
  const shared = new Set(
    formulas.flatMap(({ formula }) => (formula.shared !== undefined && callsOurs(formula.text) ? [formula.shared] : [])),
  );
  const ours = formulas.filter(({ formula }) => callsOurs(formula.text) || (formula.shared !== undefined && shared.has(formula.shared)));
  const edits = new Map(ours.map(({ address }) => [address, { formula: null }]));
  return { edits, xml: withEdits(sheet, edits, rows) };
}

/**
 * Cells with PORE formulas become their values, and nothing spills from them any more. Rules that call PORE cannot be values: they
 * go. So does the order of calculation: Excel makes it anew. All other parts stay byte for byte.
 */
export function valuesOnly(parts: Parts): Valued {
  let cells = 0;
  let rules = 0;
  for (const path of sheetPaths(parts)) {
    const before = textOf(parts, path);
    const { edits, xml } = oursIn(before);
    const kept = withoutOurRules(xml);
    cells += edits.size;
    rules += kept.rules;
    if (kept.xml !== before) edit(parts, path, () => kept.xml);
    for (const table of relationsOf(parts, path).filter(({ kind }) => kind === "table")) edit(parts, table.path, withoutOurColumns);
  }
  dropParts(parts, (path) => /(^|\/)calcChain\.xml$/i.test(path));
  return { cells, rules, words: told(cells, rules) };
}
