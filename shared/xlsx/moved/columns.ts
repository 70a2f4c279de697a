import { parseStructRef, type ReferenceStructXlsx, stringifyStructRef, stringifyTokens, tokenize } from "@borgar/fx/xlsx";
import { type At, type Block, isIn } from "../address";
import { rowsOf } from "../cells";
import { put } from "../package";
import { relationsOf, textOf } from "../parts";
import { scan } from "../scan";
import type { Parts } from "../unzip";
import { type Change, changed, escaped, read } from "../xml";
import type { Book } from "./bookparts";

/** What became of a table, for structured references such as `Blanks[cost]`. */
export interface Spoken {
  readonly table: string;
  /** Its own new name. */
  readonly to?: string;
  /** Columns that have another name now, or none, by their old names in small letters; undefined where the whole table is gone. */
  readonly columns: ReadonlyMap<string, string | undefined> | undefined;
  /** Where the table is no more and its cells stay: the cells that formulas spoke of. */
  readonly plain?: (reference: string, at: Standing) => string | undefined;
}

/** Where a formula stands. */
export interface Standing extends At {
  readonly sheet: string;
}

const small = (name: string) => name.toLowerCase();

/** A formula, without its sign, that speaks of a table as it is now; within the table it need not say its name. */
function respoken(formula: string, { table, to, columns, plain }: Spoken, isInside: boolean, at?: Standing): string {
  if (!formula.includes("[")) return formula;
  let touched = false;
  const tokens = tokenize(formula, { mergeRefs: true }).map((token) => {
    if (token.type !== "structured") return token;
    const own = parseStructRef(token.value) as ReferenceStructXlsx | undefined;
    if (!own || own.workbookName || (own.table ? small(own.table) !== small(table) : !isInside)) return token;
    const said = own.columns ?? [];
    const isKnown = (name: string) => columns?.has(small(name));
    const name = own.table && to ? { table: to } : {};
    if (columns && !said.some(isKnown) && !("table" in name)) return token;
    touched = true;
    const now = said.map((name) => (isKnown(name) ? columns!.get(small(name)) : name));
    const cells = !columns && at && plain?.(token.value, at);
    if (cells) return { ...token, value: cells };
    if (!columns || now.includes(undefined)) return { ...token, value: "#REF!" };
    return { ...token, value: stringifyStructRef({ ...own, ...name, columns: now as string[] }, { thisRow: true }) };
  });
  return touched ? stringifyTokens(tokens) : formula;
}

/** The formulas between certain tags of a part. */
function respokenIn(xml: string, names: ReadonlySet<string>, speak: (formula: string) => string): string {
  const changes: Change[] = [];
  let text = "";
  scan(xml, {
    open: () => {
      text = "";
    },
    text: (more) => {
      text += more;
    },
    close(tag, end) {
      if (!names.has(tag.local) || tag.closed) return;
      const now = speak(text);
      if (now !== text) changes.push({ start: tag.open, end: xml.lastIndexOf("</", end - 1), text: escaped(now) });
    },
  });
  return changed(xml, changes);
}

/** Updates structured references in the formulas of one sheet; `block` is the table's range, if it is on this sheet. */
export function speakOfIn(parts: Parts, sheet: string, spoken: Spoken, block: Block | undefined, name = ""): void {
  const xml = textOf(parts, sheet);
  if (block ? xml.includes("[") : small(xml).includes(`${small(spoken.table)}[`)) {
    const changes = rowsOf(xml, []).flatMap(({ cells }) =>
      cells.flatMap(({ formula, row, column, prefix }): Change[] => {
        if (!formula?.text.includes("[")) return [];
        const isInside = block !== undefined && isIn(block, { row, column });
        const now = respoken(formula.text, spoken, isInside, { sheet: name, row, column });
        if (now === formula.text) return [];
        const open = xml.slice(formula.start, xml.indexOf(">", formula.start) + 1);
        return [{ start: formula.start, end: formula.end, text: `${open}${escaped(now)}</${prefix}f>` }];
      }),
    );
    if (changes.length) put(parts, sheet, changed(xml, changes));
  }
  for (const { kind, path } of relationsOf(parts, sheet)) {
    if (kind !== "table" || !parts.has(path)) continue;
    const text = textOf(parts, path);
    const { displayName = "" } = read(text).attributes;
    const isOwn = [spoken.table, spoken.to].some((name) => name !== undefined && small(displayName) === small(name));
    const now = respokenIn(text, inTables, (formula) => respoken(formula, spoken, isOwn));
    if (now !== text) put(parts, path, now);
  }
}

const inTables = new Set(["calculatedColumnFormula", "totalsRowFormula"]);
const inNames = new Set(["definedName"]);

/** The same in every formula of a workbook. */
export function speakOf({ parts, path, sheets }: Book, spoken: Spoken, at?: { readonly path: string; readonly block: Block }): void {
  for (const sheet of sheets) speakOfIn(parts, sheet.path, spoken, sheet.path === at?.path ? at.block : undefined, sheet.name);
  const xml = textOf(parts, path);
  const now = respokenIn(xml, inNames, (formula) => respoken(formula, spoken, false, { sheet: "", row: 0, column: 0 }));
  if (now !== xml) put(parts, path, now);
}
