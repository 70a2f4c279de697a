import type { XmlElement } from "@rgrove/parse-xml";
import { rangeKey, rangeNames } from "../../../shared/xlsx/names";
import { type Change, changed, childOf, childrenOf, escaped, read } from "../../../shared/xlsx/xml";
import { bySheet, type SheetData } from "./piece";
import { withPlace } from "./ruleplaces";

type Rule = SheetData["dataValidationRules"][number];

/** What a rule for typing says to a person, and how strict it is: the engine keeps the rule alone. */
export interface KeptValidation {
  /** The attributes as the file has them, but for the cells and the comparison. */
  readonly says: Readonly<Record<string, string>>;
  /** What the rule asked for. */
  readonly was: string;
}

export type KeptValidations = Readonly<Record<string, KeptValidation>>;

const rulesIn = (root: XmlElement): XmlElement[] => childrenOf(childOf(root, "dataValidations") ?? root, "dataValidation");

/** References move with their cells; the rest of a rule is the same until somebody changes it. */
const wordsOf = ({ criterion, isBlocking }: Rule): string =>
  JSON.stringify([criterion.type, isBlocking ?? false, criterion.values.filter((value) => !/[A-Z]\$?\d/i.test(value))]);

const isRange = (text: string): boolean => /^(?:(?:'(?:[^']|'')+'|[^'!(]+)!)?\$?[A-Z]*\$?\d*(?::\$?[A-Z]*\$?\d*)?$/i.test(text);

const byKey = (names: Readonly<Record<string, string>>) => new Map(Object.entries(names).map(([name, range]) => [rangeKey(name), range]));

/** Rules that the engine cannot hold: what they ask for is not kept. */
function isForeign(element: XmlElement, names: Readonly<Record<string, string>>): boolean {
  const { type, operator } = element.attributes;
  if (type === "textLength" || type === "time") return true;
  if (type === "date") return operator === "notEqual";
  const list = type === "list" && childOf(element, "formula1")?.text.trim();
  return typeof list === "string" && !/^"/.test(list) && !isRange(list) && !byKey(names).has(rangeKey(list));
}

const hasForeign = (root: XmlElement, names: Readonly<Record<string, string>>): boolean =>
  rulesIn(root).some((element) => isForeign(element, names));

/** Rules that the engine reads none of, told to it as the next one that it knows; a list by its name as the range it stands for. */
function readableValidations(xml: string, names: Readonly<Record<string, string>>): string {
  const ranges = byKey(names);
  const changes = rulesIn(read(xml)).map((element, place): Change => {
    if (isForeign(element, names)) return { start: element.start, end: element.end, text: "" };
    const { type } = element.attributes;
    const formula = childOf(element, "formula1");
    const range = type === "list" && formula && ranges.get(rangeKey(formula.text.trim()));
    const text = withPlace(xml.slice(element.start, element.end), place)
      .replace(/(\stype=")whole"/, '$1decimal"')
      .replace(/(\serrorStyle=")information"/, '$1warning"')
      .replace(/(<formula1>)[^<]*/, (own, open) => (range ? open + escaped(range) : own));
    return { start: element.start, end: element.end, text };
  });
  return changed(xml, changes);
}

/** What the rules of a sheet say beside what the engine made of them. */
function validationsOf(root: XmlElement, sheet: SheetData): KeptValidations {
  const elements = new Map(rulesIn(root).map((element) => [element.attributes.sqref, element]));
  return Object.fromEntries(
    (sheet.dataValidationRules ?? []).flatMap((rule) => {
      const element = elements.get(rule.ranges.join(" "));
      if (!element) return [];
      const { sqref: _, operator: __, ...says } = element.attributes;
      return [[rule.id, { says, was: wordsOf(rule) }]];
    }),
  );
}

/** The rules as the engine writes them, each with its own words again where it still asks for the same. */
export function withValidations(xml: string, sheet: SheetData, kept: KeptValidations): string {
  const rules = new Map((sheet.dataValidationRules ?? []).map((rule) => [rule.ranges.join(" "), rule]));
  return changed(
    xml,
    rulesIn(read(xml)).map((element) => {
      const { sqref, operator } = element.attributes;
      const rule = rules.get(sqref);
      const own = rule && kept[rule.id];
      const says: Record<string, string> =
        own?.was === (rule && wordsOf(rule)) ? { ...own!.says, ...(operator ? { operator } : {}), sqref } : element.attributes;
      // An empty errorStyle is not an error style.
      const attributes = Object.entries(says).filter(([name, value]) => name !== "errorStyle" || value);
      const inner = childrenOf(element).map(({ start, end }) => xml.slice(start, end));
      const text = `<dataValidation${attributes.map(([name, value]) => ` ${name}="${escaped(value)}"`).join("")}>${inner.join("")}</dataValidation>`;
      return { start: element.start, end: element.end, text };
    }),
  );
}

export const validations = bySheet<KeptValidations>({
  name: "validations",
  readable: readableValidations,
  read: ({ own, sheet }) => validationsOf(own.root, sheet),
  write: (xml, { sheet }, kept = {}) => withValidations(xml, sheet, kept),
  lost: [
    [
      "rules for the length of a text or the time of day, and lists that a formula gives",
      ({ names }, { sheets }) => sheets.some(({ root }) => hasForeign(root, rangeNames(names))),
    ],
  ],
});
