/** A sheet's part in which cells with PORE formulas are their values, for people who do not have the functions. */

const quoted = /'[^']*'|"[^"]*"/g;

/** Whether a formula, as a file spells it, calls one of ours; words in quotes call nothing. */
const callsOurs = (formula: string): boolean =>
  /(?:^|[^A-Z0-9.])PORE[._][A-Z]+\(/i.test(
    formula
      .replace(/&quot;/g, '"')
      .replace(/&apos;/g, "'")
      .replace(quoted, ""),
  );

/** Elements of a name that have content. */
const filled = (name: string) => new RegExp(`<(${name})\\b(?:[^>]*[^/>])?>.*?</\\1>`, "gs");

const formula = /<f\b([^>]*?)(?:\/>|>([^<]*)<\/f>)/;

/** A formula filled down stands in full in one cell; the others refer to it by a number. */
const sharedBy = (attributes: string): string | undefined =>
  /\bt="shared"/.test(attributes) ? /\bsi="(\d+)"/.exec(attributes)?.[1] : undefined;

/** Cells lose their PORE formulas and keep their values; nothing spills from them any more. */
function settledCells(xml: string): { readonly xml: string; readonly cells: number } {
  const ours = new Set<string | undefined>();
  for (const [, attributes, text = ""] of xml.matchAll(new RegExp(formula, "g"))) if (callsOurs(text)) ours.add(sharedBy(attributes));
  if (!ours.size) return { xml, cells: 0 };
  let cells = 0;
  const settled = xml.replace(filled("c"), (cell) => {
    const [element, attributes, text = ""] = formula.exec(cell) ?? [];
    if (element === undefined) return cell;
    const shared = sharedBy(attributes);
    if (!callsOurs(text) && (shared === undefined || !ours.has(shared))) return cell;
    cells++;
    return cell.replace(element, "").replace(/^(<c\b[^>]*?)\s+cm="\d+"/, "$1");
  });
  return { xml: settled, cells };
}

const emptied = (xml: string, name: string): string =>
  xml.replace(new RegExp(`<((?:\\w+:)?${name})\\b[^>]*>(?:<xm:sqref>[^<]*</xm:sqref>|\\s)*</\\1>`, "g"), "");

/** A rule that colours or checks cells cannot become a value: it goes, and with the last of a block its block. */
function settledRules(xml: string): { readonly xml: string; readonly rules: number } {
  let rules = 0;
  const kept = xml.replace(filled("(?:\\w+:)?(?:cfRule|dataValidation)"), (rule) => {
    const formulas = [...rule.matchAll(/>([^<]+)<|\sval="([^"]*)"/g)];
    if (!formulas.some(([, text, value]) => callsOurs(text ?? value))) return rule;
    rules++;
    return "";
  });
  if (!rules) return { xml, rules };
  const counted = kept.replace(filled("(?:\\w+:)?dataValidations"), (block) =>
    block.replace(/\scount="\d+"/, ` count="${block.match(/<(?:\w+:)?dataValidation\b/g)?.length ?? 0}"`),
  );
  const blocks = ["conditionalFormatting", "conditionalFormattings", "dataValidations", "ext", "extLst"];
  return { xml: blocks.reduce(emptied, counted), rules };
}

export interface Settled {
  readonly xml: string;
  /** How many formulas became values, and how many rules went. */
  readonly cells: number;
  readonly rules: number;
}

export function settled(sheet: string): Settled {
  const { xml, cells } = settledCells(sheet);
  return { ...settledRules(xml), cells };
}

/** A table fills new rows with the formulas of its columns: with none of ours. */
export const settledTable = (table: string): string =>
  table.replace(filled("calculatedColumnFormula"), (column) => (callsOurs(column.replace(/<[^>]*>/g, "")) ? "" : column));
