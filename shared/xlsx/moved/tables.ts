import { addressOf, type Block, blockOf, rangeOf } from "../address";
import { type Move, movedBlock, movedFormula, sheetName } from "../move";
import { elementRetagged, tagWith } from "../retag";
import { type Change, changed, childOf, childrenOf, escaped, plainText, read, unescaped } from "../xml";
import { movedRange, shifts } from "./ranges";
import { movedSheet } from "./sheet";

/** A name for a column, as files hold it, that no other column of the table has. */
export function freeColumn(taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`column${number}`)) number++;
  return `Column${number}`;
}

export interface MovedTable {
  /** Undefined where the whole table is gone. */
  readonly xml: string | undefined;
  /** Headers of columns that came in, by address. */
  readonly headers: ReadonlyMap<string, string>;
  /** Names of columns that went. */
  readonly gone: readonly string[];
}

/** A table after columns of its sheet came or went: it has as many columns as its range. */
function withColumns(
  xml: string,
  before: Block,
  { at, by }: Extract<Move, { kind: "lines" }>,
  isWider = false,
): { xml: string; added: Map<number, string>; gone: string[] } {
  const root = read(xml);
  const gone: string[] = [];
  const list = childOf(root, "tableColumns")!;
  const columns = childrenOf(list, "tableColumn");
  const first = at - before.left;
  const changes: Change[] = [];
  const added = new Map<number, string>();
  const taken = new Set(columns.map(({ attributes }) => unescaped(attributes.name ?? "").toLowerCase()));
  let count = columns.length;
  if (by > 0) {
    if (first <= 0 || first > columns.length || (first === columns.length && !isWider)) return { xml, added, gone };
    let id = Math.max(0, ...columns.map(({ attributes }) => Number(attributes.id)));
    let text = "";
    for (let i = 0; i < by; i++) {
      const name = freeColumn(taken);
      taken.add(name.toLowerCase());
      added.set(at + i, name);
      text += `<${columns[0].name} id="${++id}" name="${name}"/>`;
    }
    const place = columns[first]?.start ?? columns.at(-1)!.end;
    changes.push({ start: place, end: place, text });
    count += by;
  } else
    for (const [i, column] of columns.entries())
      if (i >= first && i < first - by) {
        changes.push({ start: column.start, end: column.end, text: "" });
        gone.push(unescaped(column.attributes.name ?? ""));
        count--;
      }
  changes.push(elementRetagged(xml, list, { count }));
  return { xml: changed(xml, changes), added, gone };
}

/** A table that reaches to another row or column than before; undefined where no row would be left between header and totals. */
export function resizedTable(xml: string, now: Block): { readonly xml: string; readonly gone: readonly string[] } | undefined {
  const root = read(xml);
  const { ref = "A1", headerRowCount = "1", totalsRowCount = "0" } = root.attributes;
  if (now.bottom - now.top + 1 - Number(headerRowCount) - Number(totalsRowCount) < 1) return undefined;
  const before = blockOf(ref);
  const [had, has] = [before.right - before.left + 1, now.right - now.left + 1];
  const lines = { kind: "lines", sheet: "", axis: "column" } as const;
  const at = before.left + Math.min(had, has);
  const made = had === has ? undefined : withColumns(xml, before, { ...lines, at, by: has - had }, true);
  const wide = made?.xml ?? xml;
  const again = read(wide);
  const filter = childOf(again, "autoFilter");
  const changes = [elementRetagged(wide, again, { ref: rangeOf(now) })];
  if (filter) {
    const cells = rangeOf({ ...now, bottom: now.bottom - Number(totalsRowCount) });
    changes.push(elementRetagged(wide, filter, { ref: cells }));
  }
  return { xml: changed(wide, changes), gone: made?.gone ?? [] };
}

/** A table after rows of its sheet went: without its header, its totals or all that stood between, if these went. */
function withoutRows(
  xml: string,
  before: Block,
  after: Block,
  { at, by }: Extract<Move, { kind: "lines" }>,
  isFree: (row: Block) => boolean,
): string | undefined {
  const root = read(xml);
  const { headerRowCount = "1", totalsRowCount = "0" } = root.attributes;
  const went = (line: number) => line >= at && line < at - by;
  const noHeader = headerRowCount !== "0" && went(before.top);
  const noTotals = totalsRowCount !== "0" && went(before.bottom);
  const header = noHeader ? 0 : Number(headerRowCount);
  const totals = noTotals ? 0 : Number(totalsRowCount);
  const set: Record<string, string | number | undefined> = {};
  if (noHeader) set.headerRowCount = 0;
  if (noTotals) set.totalsRowCount = undefined;
  const filter = childOf(root, "autoFilter");
  let filtered = filter && { ...after, bottom: after.bottom - totals };
  if (after.bottom - after.top + 1 - header - totals < 1) {
    // A table always has a row for input, a blank one where no other is left.
    const next = { ...after, top: after.bottom + 1, bottom: after.bottom + 1 };
    if (!header || totals || !isFree(next)) return undefined;
    set.ref = rangeOf({ ...after, bottom: next.bottom });
    set.insertRow = 1;
    filtered &&= { ...after, bottom: next.bottom };
  }
  const changes: Change[] = Object.keys(set).length ? [elementRetagged(xml, root, set)] : [];
  if (filter && noHeader) changes.push({ start: filter.start, end: filter.end, text: "" });
  else if (filter) changes.push(elementRetagged(xml, filter, { ref: rangeOf(filtered!) }));
  return changed(xml, changes);
}

/** `isFree` tells whether nothing stands in a row of cells below the table. */
export function movedTable(xml: string, own: string, move: Move, isFree: (row: Block) => boolean): MovedTable {
  const ref = read(xml).attributes.ref ?? "A1";
  const none = { headers: new Map<string, string>(), gone: [] };
  const stays = movedSheet(xml, own, move);
  if (!shifts(own, move)) return { xml: stays.xml, ...none };
  const before = blockOf(ref);
  const after = movedBlock(before, move);
  if (!after) return { xml: undefined, ...none };
  if (move.kind !== "lines" || (move.axis === "row" && move.by > 0)) return { xml: stays.xml, ...none };
  if (move.axis === "row") {
    const touched = move.at <= before.bottom && move.at - move.by > before.top;
    return { xml: touched ? withoutRows(stays.xml, before, after, move, isFree) : stays.xml, ...none };
  }
  const { xml: wide, added, gone } = withColumns(stays.xml, before, move);
  const hasHeader = read(xml).attributes.headerRowCount !== "0";
  const headers = new Map([...added].map(([column, name]) => [addressOf({ row: after.top, column }), name] as const));
  return { xml: wide, headers: hasHeader ? headers : none.headers, gone };
}

/** Where a pivot table stands, and where it takes its numbers from. */
export function movedPivot(xml: string, own: string, move: Move): string {
  if (!shifts(own, move)) return xml;
  return xml.replace(/(<(?:\w+:)?location\b[^>]*?\sref=")([^"]*)/, (_, open: string, ref: string) => open + (movedRange(ref, move) || ref));
}

export function movedPivotSource(xml: string, move: Move): string {
  return xml.replace(/<(?:\w+:)?worksheetSource\b[^>]*>/, (tag) => {
    const says = (name: string) => new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];
    const [sheet, ref] = [says("sheet"), says("ref")];
    if (!sheet || says("r:id")) return tag;
    const name = plainText(sheet);
    const set: Record<string, string> = {};
    if (move.kind === "names") {
      const to = move.sheets.get(sheetName(name));
      if (to !== undefined) set.sheet = to;
    } else if (ref && shifts(name, move)) set.ref = movedRange(ref, move) || ref;
    return Object.keys(set).length ? tagWith(tag, set) : tag;
  });
}

/** A print area, or rows to print on every page, without deleted cells. */
const withoutLost = (formula: string): string =>
  (formula.match(/(?:'(?:[^']|'')*'|[^,'])+/g) ?? []).filter((range) => !range.includes("#REF!")).join(",");

/** What names stand for: ranges to print, and whatever a person has named. The program's own names go with their cells. */
export function movedNames(xml: string, move: Move): string {
  return xml
    .replace(/(<(?:\w+:)?definedName\b[^>]*>)([^<]*)(<\/(?:\w+:)?definedName>)/g, (all, open: string, text: string, close: string) => {
      const plain = plainText(text);
      const { formula } = movedFormula(plain, "", move);
      if (formula === plain) return all;
      const left = /\sname="_xlnm\./.test(open) ? withoutLost(formula) : formula;
      return left ? open + escaped(left) + close : "";
    })
    .replace(/<((?:\w+:)?)definedNames>\s*<\/\1definedNames>/, "");
}
