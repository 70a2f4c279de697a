import { type Change, escaped } from "./xml";

/** A start tag with some of its attributes set, or taken away where the new value is undefined. */
export function retagged(
  xml: string,
  { start, open }: { readonly start: number; readonly open: number },
  attributes: Readonly<Record<string, string | number | undefined>>,
): Change {
  let text = xml.slice(start, open);
  for (const [name, value] of Object.entries(attributes)) {
    const own = new RegExp(`(\\s)${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
    const said = value === undefined ? "" : `${name}="${escaped(String(value))}"`;
    if (own.test(text)) text = text.replace(own, (_, space) => (said ? space + said : ""));
    else if (said) text = text.replace(/\s*\/?>$/, (end) => ` ${said}${end.trim()}`);
  }
  return { start, end: open, text };
}
