import type { Outcome } from "../outcome";
import { addressOf, atOf, type Block, rangeOf, sizeOf } from "./address";
import type { FileCell } from "./cells";
import { type Form, formOf, valueElement } from "./form";
import { insertions, newRows, type Written } from "./newcells";
import { type Change, changed, escaped } from "./xml";

/** A formula to be written into a cell that is there. */
export interface NewFormula {
  readonly formula: string;
  /** The cells that it fills, where it may fill several. */
  readonly block?: Block;
  /** The number of the workbook's mark for such formulas. */
  readonly mark?: number;
}

/** Whether a cell shows this already: then it stays as it is, however its number is spelt. */
function shows({ type, value, formula }: FileCell, form: Form): boolean {
  // A cell that another fills may be blank for empty text; a formula says so.
  if (!form.text) return !value && (form.type === undefined || value === "" || !formula);
  const kind = type === "n" ? undefined : type === "s" || type === "inlineStr" ? "str" : type;
  if (value === undefined || kind !== form.type) return false;
  return form.type === undefined
    ? Number(value) === Number(form.text)
    : form.type === "str"
      ? escaped(value) === form.text
      : value === form.text;
}

const typeAttribute = /\s+t\s*=\s*(?:"[^"]*"|'[^']*')/;
/** Tells what kind of error or rich value the old value was. */
const detail = /\s+vm\s*=\s*(?:"[^"]*"|'[^']*')/;

/** Marks an array formula that fills as many cells as it needs. */
const metadata = /\s+cm\s*=\s*(?:"[^"]*"|'[^']*')/;

/** Changes that make one cell show a value: its type, and what stands between its tags in place of the old value. */
function cellChanges(xml: string, cell: FileCell, { type, text }: Form): Change[] {
  const { prefix, start, open, end, closed, shown, formula } = cell;
  const tag = xml.slice(start, open).replace(typeAttribute, "").replace(detail, "");
  const typed = type ? tag.replace(/\s*\/?>$/, (ending) => ` t="${type}"${ending}`) : tag;
  const value = valueElement(prefix, text);
  if (closed) {
    const whole = value ? `${typed.replace(/\s*\/>$/, ">")}${value}</${prefix}c>` : typed;
    return [{ start, end, text: whole }];
  }
  const after = formula?.end ?? open;
  return [
    { start, end: open, text: typed },
    { ...(shown ?? { start: after, end: after }), text: value },
  ];
}

/** A cell written anew: its look stays, its formula is another. */
function cellWithFormula(
  xml: string,
  { start, open, end, prefix }: FileCell,
  { type, text }: Form,
  { block, formula, mark = 1 }: NewFormula,
): Change[] {
  const tag = [typeAttribute, detail, metadata].reduce((rest, attribute) => rest.replace(attribute, ""), xml.slice(start, open));
  const attributes = `${type ? ` t="${type}"` : ""}${block ? ` cm="${mark}"` : ""}`;
  const f = block ? `f t="array" ref="${sizeOf(block) === 1 ? addressOf({ row: block.top, column: block.left }) : rangeOf(block)}"` : "f";
  const whole = `${tag.replace(/\s*\/?>$/, attributes)}><${prefix}${f}>${escaped(formula)}</${prefix}f>${valueElement(prefix, text)}</${prefix}c>`;
  return [{ start, end, text: whole }];
}

/** A sheet with new values in some of its cells; all else stays character for character. */
export function valuesWritten(
  sheet: Written,
  values: ReadonlyMap<string, Outcome | undefined>,
  formulas: ReadonlyMap<string, NewFormula> = new Map(),
): string {
  const forms = new Map([...values].map(([address, value]) => [address, formOf(value)]));
  const changes: Change[] = [];
  const missing = new Map(forms);
  for (const row of sheet.rows)
    for (const cell of row.cells) {
      const form = forms.get(addressOf(cell));
      missing.delete(addressOf(cell));
      const formula = formulas.get(addressOf(cell));
      if (formula && form) changes.push(...cellWithFormula(sheet.xml, cell, form, formula));
      else if (form && !shows(cell, form)) changes.push(...cellChanges(sheet.xml, cell, form));
    }
  const byRow = new Map<number, string[]>();
  const inOrder = [...missing].filter(([, { text }]) => text !== undefined).map(([address]) => address);
  inOrder.sort((a, b) => atOf(a).row - atOf(b).row || atOf(a).column - atOf(b).column);
  for (const address of inOrder) {
    const { row } = atOf(address);
    byRow.set(row, [...(byRow.get(row) ?? []), address]);
  }
  for (const row of sheet.rows) {
    const addresses = byRow.get(row.row);
    if (!addresses) continue;
    changes.push(...insertions(sheet.xml, row, addresses, forms));
    byRow.delete(row.row);
  }
  changes.push(...newRows(sheet, byRow, forms));
  return changed(sheet.xml, changes);
}
