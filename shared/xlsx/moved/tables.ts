import { type Block, blockOf, rangeOf } from "../address";
import { type Move, movedBlock, movedFormula } from "../move";
import { retagged } from "../retag";
import { type Change, changed, childOf, childrenOf, escaped, openingOf, read, unescaped } from "../xml";
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
}

/** A table after columns of its sheet came or went: it has as many columns as its range. */
function withColumns(
  xml: string,
  before: Block,
  { at, by }: Extract<Move, { kind: "lines" }>,
): { xml: string; added: Map<number, string> } {
  const root = read(xml);
  const list = childOf(root, "tableColumns")!;
  const columns = childrenOf(list, "tableColumn");
  const first = at - before.left;
  const changes: Change[] = [];
  const added = new Map<number, string>();
  const taken = new Set(columns.map(({ attributes }) => unescaped(attributes.name ?? "").toLowerCase()));
  let count = columns.length;
  if (by > 0) {
    if (first <= 0 || first >= columns.length) return { xml, added };
    let id = Math.max(0, ...columns.map(({ attributes }) => Number(attributes.id)));
    let text = "";
    for (let i = 0; i < by; i++) {
      const name = freeColumn(taken);
      taken.add(name.toLowerCase());
      added.set(at + i, name);
      text += `<${columns[0].name} id="${++id}" name="${name}"/>`;
    }
    const place = columns[first].start;
    changes.push({ start: place, end: place, text });
    count += by;
  } else
    for (const [i, column] of columns.entries())
      if (i >= first && i < first - by) {
        changes.push({ start: column.start, end: column.end, text: "" });
        count--;
      }
  const tag = { start: list.start, open: openingOf(xml, list).end };
  changes.push(retagged(xml, tag, { count }));
  return { xml: changed(xml, changes), added };
}

export function movedTable(xml: string, own: string, move: Move): MovedTable {
  const ref = read(xml).attributes.ref ?? "A1";
  const none = new Map<string, string>();
  const stays = movedSheet(xml, own, move);
  if (!shifts(own, move)) return { xml: stays.xml, headers: none };
  const before = blockOf(ref);
  const after = movedBlock(before, move);
  if (!after) return { xml: undefined, headers: none };
  if (move.kind !== "lines" || move.axis === "row") return { xml: stays.xml, headers: none };
  const { xml: wide, added } = withColumns(stays.xml, before, move);
  const hasHeader = read(xml).attributes.headerRowCount !== "0";
  const headers = new Map(
    [...added].map(
      ([column, name]) => [rangeOf({ top: after.top, bottom: after.top, left: column, right: column }).split(":")[0], name] as const,
    ),
  );
  return { xml: wide, headers: hasHeader ? headers : none };
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
    const name = sheet
      .replace(/&apos;/g, "'")
      .replace(/&quot;/g, '"')
      .replace(/&lt;/g, "<")
      .replace(/&gt;/g, ">")
      .replace(/&amp;/g, "&");
    const set: Record<string, string> = {};
    if (move.kind === "names") {
      const to = move.sheets.get(name.toLowerCase());
      if (to !== undefined) set.sheet = to;
    } else if (ref && shifts(name, move)) set.ref = movedRange(ref, move) || ref;
    return Object.keys(set).length ? retagged(tag, { start: 0, open: tag.length }, set).text : tag;
  });
}

/** What names stand for: ranges to print, and whatever a person has named. */
export function movedNames(xml: string, move: Move): string {
  return xml.replace(/(<(?:\w+:)?definedName\b[^>]*>)([^<]*)(?=<)/g, (all, open: string, text: string) => {
    const plain = text
      .replace(/&apos;/g, "'")
      .replace(/&quot;/g, '"')
      .replace(/&lt;/g, "<")
      .replace(/&gt;/g, ">")
      .replace(/&amp;/g, "&");
    const { formula } = movedFormula(plain, "", move);
    return formula === plain ? all : open + escaped(formula);
  });
}
