import { addressOf, atOf } from "./address";
import type { DefinedName } from "./parts";
import { engineReference } from "./sheetname";
import { joined, tokensOf } from "./tokens";
import { escaped } from "./xml";

/** Two names of ranges or tables with one key cannot stand in one workbook. */
export const rangeKey = (name: string): string => name.toLowerCase();

const isRange = (text: string): boolean => {
  const [first, ...rest] = tokensOf(text.replace(/^=/, "").trim());
  if (!first || (first.kind !== "sheet" && !first.text.endsWith("!"))) return false;
  const shape = rest.map(({ kind, text }) => (kind === "cell" || kind === "range" ? "r" : text)).join("");
  return shape === "r" || shape === "r:r";
};

/** Built-in defined names (_xlnm): print areas, filters. */
const isInner = ({ name }: DefinedName) => name.startsWith("_xlnm.") || name.startsWith("_xl");

/** Without dollar signs, as the engine keeps the ranges of names. */
const loose = (text: string) =>
  joined(tokensOf(text).map(({ kind, text }) => ({ kind, text: kind === "sheet" ? engineReference(text) : text.replace(/\$/g, "") })));

/** Names of ranges, for the engine. */
export const rangeNames = (names: readonly DefinedName[]): Record<string, string> =>
  Object.fromEntries(
    names
      .filter((one) => one.sheet === undefined && !isInner(one) && isRange(one.text))
      .map(({ name, text }) => [name, loose(text.trim())]),
  );

/** What the other names stand for, ready to take the name's place: those of one sheet, and those that are no range. */
export function meanings(names: readonly DefinedName[]): (name: string, sheet: string) => string | undefined {
  const others = names.filter((one) => !isInner(one) && (one.sheet !== undefined || !isRange(one.text)));
  if (!others.length) return () => undefined;
  return (name, sheet) => {
    const fits = others.filter((one) => rangeKey(one.name) === rangeKey(name) && (one.sheet ?? sheet) === sheet);
    const found = fits.find((one) => one.sheet !== undefined) ?? fits[0];
    return found && (isRange(found.text) ? found.text : `(${found.text})`);
  };
}

/** With the dollar signs that names have in files. */
export const fixed = (range: string): string =>
  tokensOf(range)
    .map(({ kind, text }) => {
      if (kind === "range") return text.replace(/\$?([A-Z]+|\d+)/gi, "$$$1");
      return kind === "cell" ? addressOf(atOf(text)).replace(/^([A-Z]+)/, "$$$1$") : text;
    })
    .join("");

/** The names of a workbook as its file keeps them; those of the print set-up belong to one sheet each. */
export function namesXml(
  ranges: Readonly<Record<string, string>>,
  prints: readonly { readonly names: Readonly<Record<string, string>> }[],
): string {
  const own = Object.entries(ranges).map(([name, range]) => `<definedName name="${escaped(name)}">${escaped(fixed(range))}</definedName>`);
  const printed = prints.flatMap(({ names }, i) =>
    Object.entries(names).map(([name, text]) => `<definedName name="${name}" localSheetId="${i}">${escaped(text)}</definedName>`),
  );
  const all = [...own, ...printed];
  return all.length ? `<definedNames>${all.join("")}</definedNames>` : "";
}
