import type { XmlElement } from "@rgrove/parse-xml";
import { quotedSheet } from "../../../shared/xlsx/sheetname";
import { childOf, childrenOf, escaped } from "../../../shared/xlsx/xml";
import type { Ranges } from "./followed";

/** What a link says beside where it leads, and the very cell on the sheet that it leads to. */
export interface KeptLink {
  readonly key: string;
  readonly tooltip?: string;
  /** The sheet by the engine's name, and the key of the cell there. */
  readonly to?: { readonly sheetId: string; readonly key: string };
}

export interface Found {
  readonly links: readonly KeptLink[];
  /** Ranges to be followed, by their sheets. */
  readonly follow: readonly (readonly [sheetId: string, key: string, range: string])[];
}

/** `'My Shop'!A1` as the sheet and the cell. */
export function parted(location: string): readonly [sheet: string, cell: string] {
  const at = location.lastIndexOf("!");
  const sheet = location.slice(0, Math.max(0, at)).replace(/^'|'$/g, "").replace(/''/g, "'");
  return [sheet, location.slice(at + 1).replace(/\$/g, "")];
}

/** `ids` are the engine's names of sheets by their own. */
export function linksOf(root: XmlElement, sheetId: string, ids: ReadonlyMap<string, string>): Found {
  const follow: [string, string, string][] = [];
  const links = childrenOf(childOf(root, "hyperlinks") ?? root, "hyperlink").map(({ attributes: { ref, location = "", tooltip } }, i) => {
    const key = `link ${i}`;
    follow.push([sheetId, key, ref]);
    const [sheet, cell] = parted(location);
    const toSheet = ids.get(sheet);
    if (toSheet === undefined || !/^[A-Z]+\d+$/i.test(cell)) return { key, tooltip };
    const toKey = `${key} of ${sheetId}`;
    follow.push([toSheet, toKey, cell]);
    return { key, tooltip, to: { sheetId: toSheet, key: toKey } };
  });
  return { links, follow };
}

const quoted = (sheet: string) => (/^[A-Za-z_]\w*$/.test(sheet) ? sheet : quotedSheet(sheet));

/** The links as the engine writes them, made so that other programs follow them. */
export function withLinks(
  xml: string,
  links: readonly KeptLink[],
  here: Ranges,
  there: (sheetId: string) => { readonly name?: string; readonly ranges: Ranges },
): string {
  const byCell = new Map(links.map((link) => [here[link.key], link]));
  return xml.replace(/<hyperlink\s[^>]*\/>/g, (tag) => {
    const link = byCell.get(/\sref="([^"]*)"/.exec(tag)?.[1] ?? "");
    const target = link?.to && there(link.to.sheetId);
    const tooltip = link?.tooltip ? ` tooltip="${escaped(link.tooltip)}"` : "";
    return tag
      .replace(/(\slocation=")([^"]*)!([^"!]*)"/, (_, open, sheet, cell) => {
        const at = target?.name !== undefined && escaped(target.name) === sheet ? target.ranges[link!.to!.key] : undefined;
        return `${open}${quoted(sheet)}!${at ?? cell}"`;
      })
      .replace(/\s*\/>$/, `${tooltip}/>`);
  });
}
