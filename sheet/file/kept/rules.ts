import type { WorkbookData } from "@odoo/o-spreadsheet";
import type { XmlElement } from "@rgrove/parse-xml";
import { inserted, prefixOf, sheetRoot, withElement } from "../../../shared/xlsx/elements";
import { elementRetagged } from "../../../shared/xlsx/retag";
import { without } from "../../../shared/xlsx/without";
import { type Change, changed, childOf, childrenOf, nameOf, openingOf, prefixed } from "../../../shared/xlsx/xml";
import type { Places } from "../beside/ruleplaces";
import type { Pair } from "./difference";
import type { Made } from "./maderules";
import { nothingPaired, type Paired, paired } from "./pairing";
import { touchKey } from "./structure";

type SheetData = WorkbookData["sheets"][number];
type Coloring = SheetData["conditionalFormats"][number];
type Typing = SheetData["dataValidationRules"][number];

/** What became of the rules of a sheet. */
export interface RuleChanges {
  readonly colors: Paired<Coloring>;
  readonly typing: Paired<Typing>;
}

/** `touched` are the rules that somebody made, changed or took away. */
export function ruleChanges({ before, now }: Pair, touched: readonly string[]): RuleChanges {
  const keys = new Set(touched);
  if (!touched.some((key) => key.startsWith(touchKey(now.id, "")))) return { colors: nothingPaired, typing: nothingPaired };
  const isTouched = ({ id }: { readonly id: string }) => keys.has(touchKey(now.id, id));
  const color = ({ rule, stopIfTrue }: Coloring) => JSON.stringify([rule, stopIfTrue ?? false]);
  const type = ({ criterion, isBlocking }: Typing) => JSON.stringify([criterion, isBlocking ?? false]);
  return {
    colors: paired(before?.conditionalFormats ?? [], now.conditionalFormats ?? [], color, isTouched),
    typing: paired(before?.dataValidationRules ?? [], now.dataValidationRules ?? [], type, isTouched),
  };
}

const isStill = ({ gone, came, moved }: Paired<never>) => !gone.length && !came.length && !moved.length;

const opened = (xml: string, element: XmlElement, sqref: string): string => elementRetagged(xml, element, { sqref }).text;

/** Ranks of the rules that the engine knows, in its order: those that are there, dealt out again where the order is another. */
function ranksOf(
  now: readonly Coloring[],
  colors: Paired<Coloring>,
  rankAt: (rule: Coloring) => number,
  highest: number,
): Map<Coloring, number> {
  let next = highest;
  const ranks = now.map((rule) => (colors.was.has(rule) ? rankAt(colors.was.get(rule)!) : ++next));
  const sorted = [...ranks].sort((a, b) => a - b);
  return new Map(now.map((rule, i) => [rule, sorted[i]]));
}

/** Conditional formats: changed ones are rewritten, all others stay as they are. `look` adds a rule's style to the workbook. */
export function withColors(
  xml: string,
  { now }: Pair,
  colors: Paired<Coloring>,
  places: Places["rules"],
  made: Made["rules"],
  look: (text: string) => number,
): string {
  if (colors === nothingPaired) return xml;
  const root = sheetRoot(xml);
  const prefix = prefixOf(root);
  const blocks = childrenOf(root, "conditionalFormatting");
  const rules = blocks.flatMap((block) => childrenOf(block, "cfRule").map((rule) => ({ block, rule })));
  const at = (rule: Coloring) => rules[places[rule.id]];
  const rank = (element: XmlElement | undefined) => Number(element?.attributes.priority ?? 0);
  const ranks = ranksOf(
    now.conditionalFormats,
    colors,
    (rule) => rank(at(rule)?.rule),
    Math.max(0, ...rules.map(({ rule }) => rank(rule))),
  );
  const reordered = now.conditionalFormats.some((rule) => {
    const was = colors.was.get(rule);
    return was && at(was) && rank(at(was).rule) !== ranks.get(rule);
  });
  if (isStill(colors as never) && !reordered) return xml;
  const text = (rule: XmlElement, priority: number) => {
    const tag = elementRetagged(xml, rule, { priority });
    return tag.text + xml.slice(tag.end, rule.end);
  };
  /** What each rule of the file becomes: its text in its block, or a block of its own after it. */
  const inBlock = new Map<XmlElement, string>();
  const own = new Map<XmlElement, string[]>();
  for (const rule of colors.gone) if (at(rule)) inBlock.set(at(rule).rule, "");
  for (const [rule, was] of colors.was) {
    const there = at(was);
    if (!there) continue;
    if (!colors.moved.some(([, is]) => is === rule)) inBlock.set(there.rule, text(there.rule, ranks.get(rule)!));
    else {
      inBlock.set(there.rule, "");
      const block = `${opened(xml, there.block, rule.ranges.join(" "))}${text(there.rule, ranks.get(rule)!)}</${there.block.name}>`;
      own.set(there.block, [...(own.get(there.block) ?? []), block]);
    }
  }
  const changes: Change[] = blocks.flatMap((block) => {
    const inner = childrenOf(block, "cfRule");
    if (!inner.some((rule) => inBlock.has(rule))) return [];
    const left = inner.map((rule) => inBlock.get(rule) ?? xml.slice(rule.start, rule.end)).join("");
    const rest = childrenOf(block).filter((child) => nameOf(child) !== "cfRule");
    const others = rest.map(({ start, end }) => xml.slice(start, end)).join("");
    const whole = left ? `${xml.slice(block.start, openingOf(xml, block).end)}${left}${others}</${block.name}>` : "";
    return [{ start: block.start, end: block.end, text: whole + (own.get(block) ?? []).join("") }];
  });
  const added = colors.came.flatMap((rule, i) => {
    const one = made[i];
    if (!one) return [];
    const number = one.look === undefined ? undefined : look(one.look);
    const tag = one.text.replace(/(\spriority=")\d+/, (_, is) => is + ranks.get(rule)).replace(/(\sdxfId=")\d+/, (_, is) => is + number);
    return [prefixed(`<conditionalFormatting sqref="${rule.ranges.join(" ")}">${tag}</conditionalFormatting>`, prefix)];
  });
  return inserted(changed(xml, changes), "conditionalFormatting", added.join(""));
}

/** Rules for typing, the same way; a cell has one at most. */
export function withTyping(xml: string, typing: Paired<Typing>, places: Places["validations"], made: Made["validations"]): string {
  if (isStill(typing as never)) return xml;
  const root = sheetRoot(xml);
  const prefix = prefixOf(root);
  const list = childOf(root, "dataValidations");
  const elements = list ? childrenOf(list, "dataValidation") : [];
  const gone = new Set(typing.gone.map(({ id }) => elements[places[id]]));
  const moved = new Map(typing.moved.map(([was, is]) => [elements[places[was.id]], is.ranges.join(" ")]));
  const taken = [...typing.came, ...typing.moved.map(([, is]) => is)].flatMap(({ ranges }) => ranges);
  const texts = elements.flatMap((element) => {
    const cells = moved.get(element) ?? (gone.has(element) ? "" : without(element.attributes.sqref ?? "", taken));
    if (!cells) return [];
    const isSame = !moved.has(element) && cells.split(" ").length === (element.attributes.sqref ?? "").split(/\s+/).length;
    if (isSame) return [xml.slice(element.start, element.end)];
    return [opened(xml, element, cells) + xml.slice(openingOf(xml, element).end, element.end)];
  });
  const added = typing.came.flatMap((_, i) => (made[i] ? [prefixed(made[i].text, prefix)] : []));
  const all = [...texts, ...added];
  if (!all.length) return withElement(xml, "dataValidations", "");
  const open = list
    ? elementRetagged(xml, list, { count: all.length }).text.replace(/\s*\/>$/, ">")
    : `<${prefix}dataValidations count="${all.length}">`;
  return withElement(xml, "dataValidations", `${open}${all.join("")}</${prefix}dataValidations>`);
}
