import type { XmlElement } from "@rgrove/parse-xml";
import { type Change, changed, escaped, openingOf, read } from "./xml";

/** Attributes to set; undefined removes one. */
export type Attributes = Record<string, string | number | undefined>;

/** A start tag with some of its attributes set, or taken away where the new value is undefined. */
export function retagged(xml: string, { start, open }: { readonly start: number; readonly open: number }, attributes: Attributes): Change {
  let text = xml.slice(start, open);
  for (const [name, value] of Object.entries(attributes)) {
    const own = new RegExp(`(\\s)${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
    const said = value === undefined ? "" : `${name}="${escaped(String(value))}"`;
    if (own.test(text)) text = text.replace(own, (_, space) => (said ? space + said : ""));
    else if (said) text = text.replace(/\s*\/?>$/, (end) => ` ${said}${end.trim()}`);
  }
  return { start, end: open, text };
}

/** The same for an element of a tree. */
export const elementRetagged = (xml: string, element: XmlElement, attributes: Attributes): Change =>
  retagged(xml, { start: element.start, open: openingOf(xml, element).end }, attributes);

/** A part with changed attributes of its root element. */
export const rootRetagged = (xml: string, attributes: Attributes): string => changed(xml, [elementRetagged(xml, read(xml), attributes)]);

/** An empty-element tag. */
export const tagWith = (tag: string, attributes: Attributes): string => retagged(tag, { start: 0, open: tag.length }, attributes).text;
