import { edit } from "../../../shared/xlsx/package";
import { changed, childrenOf, read } from "../../../shared/xlsx/xml";
import { holds, sheetHas } from "./losses";
import type { Piece, SheetData } from "./piece";
import { withPlace } from "./ruleplaces";

/** Looks that depend on what is in a cell. The engine reads the first rule of a block only, and ranks by where it stands. */

/** Kinds that the engine does not read, and that bring a formula which says the same. */
const asFormula = /(\stype=")(?:containsErrors|notContainsErrors|timePeriod)"/;

/** Every rule in a block of its own, the first in rank first. */
function readableRules(xml: string): string {
  const blocks = childrenOf(read(xml), "conditionalFormatting");
  if (!blocks.length) return xml;
  let place = 0;
  const rules = blocks.flatMap((block) => {
    const first = childrenOf(block, "cfRule")[0];
    const open = first ? xml.slice(block.start, first.start) : "";
    return childrenOf(block, "cfRule").map((rule) => {
      const text = xml.slice(rule.start, rule.end);
      const readable = /<formula>/.test(text) ? text.replace(asFormula, '$1expression"') : text;
      return { rank: Number(rule.attributes.priority), text: `${withPlace(open, place++)}${readable}</${block.name}>` };
    });
  });
  const sorted = rules.sort((a, b) => a.rank - b.rank).map(({ text }) => text);
  return changed(
    xml,
    blocks.map(({ start, end }, i) => ({ start, end, text: i ? "" : sorted.join("") })),
  );
}

/** The rules as the engine writes them, with their ranks. */
export function rankedRules(xml: string): string {
  let rank = 0;
  return xml.replace(/<cfRule\s[^>]*>/g, (tag) =>
    tag.replace(/(\spriority=")\d+/, (_, open) => open + String(++rank)).replace(/\s+stopIfTrue="0"/, ""),
  );
}

/** The engine's reader gives every rule a size and a wrapping that no file says: a rule that colors a cell leaves these as they are. */
function leaveSizes({ conditionalFormats }: Partial<SheetData>): void {
  for (const { rule } of conditionalFormats ?? []) {
    const { style } = rule as { style?: { fontSize?: number; wrapping?: string } };
    delete style?.fontSize;
    delete style?.wrapping;
  }
}

export const rules: Piece = {
  name: "rules",
  readable: readableRules,
  read: ({ sheets }) => {
    for (const { sheet } of sheets) leaveSizes(sheet);
  },
  write: ({ parts, sheets }) => {
    for (const { path } of sheets) edit(parts, path, rankedRules);
  },
  lost: [
    ["bars in cells", sheetHas(/<\w*:?dataBar[\s>]/)],
    ["borders and number formats of conditional formats", holds(/(^|\/)styles\.xml$/, /<dxf>(?:(?!<\/dxf>).)*<(?:border|numFmt)[\s>]/s)],
  ],
};
