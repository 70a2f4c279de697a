import { elementOf, prefixOf, sheetRoot, withElement } from "../../../shared/xlsx/elements";
import { put, relate } from "../../../shared/xlsx/package";
import { quotedSheet } from "../../../shared/xlsx/sheetname";
import type { Parts } from "../../../shared/xlsx/unzip";
import { escaped } from "../../../shared/xlsx/xml";

/** A cell that is a link, as the engine holds it. */
const linked = /^\[((?:[^\]\\]|\\.)*)\]\((.*)\)$/s;
const toSheet = "o-spreadsheet://";

export const isLink = (content: unknown): content is string => typeof content === "string" && linked.test(content);

/** Where the link of a cell leads; undefined where it has none. */
export const targetOf = (content: unknown): string | undefined => (isLink(content) ? linked.exec(content)?.[2] : undefined);

/** Links of cells that were made, changed or taken away on a sheet; undefined takes one away. */
export function withLinks(
  parts: Parts,
  path: string,
  xml: string,
  links: ReadonlyMap<string, string | undefined>,
  sheetOf: (id: string) => string | undefined,
): string {
  if (!links.size) return xml;
  const prefix = prefixOf(sheetRoot(xml));
  const own = elementOf(xml, "hyperlinks") ?? "";
  const kept = [...own.matchAll(/<(?:\w+:)?hyperlink\b[^>]*?(?:\/>|>[\s\S]*?<\/(?:\w+:)?hyperlink>)/g)]
    .map(([tag]) => tag)
    .filter((tag) => !links.has(/\sref="([^"]*)"/.exec(tag)?.[1] ?? ""));
  const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  for (const [address, content] of links) {
    const url = targetOf(content);
    if (!url) continue;
    if (url.startsWith(toSheet)) {
      const name = sheetOf(url.slice(toSheet.length));
      if (name) kept.push(`<${prefix}hyperlink ref="${address}" location="${escaped(`${quotedSheet(name)}!A1`)}"/>`);
      continue;
    }
    const id = relate(parts, path, "hyperlink", escaped(url));
    const file = path.replace(/([^/]*)$/, "_rels/$1.rels");
    put(
      parts,
      file,
      new TextDecoder().decode(parts.get(file)).replace(new RegExp(`(<Relationship Id="${id}"[^>]*?)/>`), '$1 TargetMode="External"/>'),
    );
    kept.push(`<${prefix}hyperlink ref="${address}" r:id="${id}" xmlns:r="${relations}"/>`);
  }
  return withElement(xml, "hyperlinks", kept.length ? `<${prefix}hyperlinks>${kept.join("")}</${prefix}hyperlinks>` : "");
}
