import type { XmlElement } from "@rgrove/parse-xml";
import { quotedSheet } from "../../../shared/xlsx/sheetname";
import { childOf, childrenOf, escaped } from "../../../shared/xlsx/xml";
import type { Contents } from "../contents/contents";
import { bySheet, type FileMade, type FileRead, type SheetMade, type SheetRead } from "./piece";

/** What a link says beside where it leads, and the very cell on the sheet that it leads to. */
export interface KeptLink {
  readonly key: string;
  readonly tooltip?: string;
  /** The sheet by the engine's name, and the key of the cell there. */
  readonly to?: { readonly sheetId: string; readonly key: string };
}

/** `'My Shop'!A1` as the sheet and the cell. */
export function parted(location: string): readonly [sheet: string, cell: string] {
  const at = location.lastIndexOf("!");
  const sheet = location.slice(0, Math.max(0, at)).replace(/^'|'$/g, "").replace(/''/g, "'");
  return [sheet, location.slice(at + 1).replace(/\$/g, "")];
}

export const linkElements = (root: XmlElement): XmlElement[] => childrenOf(childOf(root, "hyperlinks") ?? root, "hyperlink");

function linksOf({ own, sheet: { id: sheetId } }: SheetRead, { ids, follow }: FileRead): KeptLink[] {
  return linkElements(own.root).map(({ attributes: { ref, location = "", tooltip } }, i) => {
    const key = `link ${i}`;
    follow(sheetId, key, ref);
    const [sheet, cell] = parted(location);
    const toSheet = ids.get(sheet);
    if (toSheet === undefined || !/^[A-Z]+\d+$/i.test(cell)) return { key, tooltip };
    const toKey = `${key} of ${sheetId}`;
    follow(toSheet, toKey, cell);
    return { key, tooltip, to: { sheetId: toSheet, key: toKey } };
  });
}

const quoted = (sheet: string) => (/^[A-Za-z_]\w*$/.test(sheet) ? sheet : quotedSheet(sheet));

/** The links as the engine writes them, made so that other programs follow them. */
function withLinks(xml: string, { here }: SheetMade, links: readonly KeptLink[] = [], { sheets }: FileMade): string {
  const byCell = new Map(links.map((link) => [here[link.key], link]));
  return xml.replace(/<hyperlink\s[^>]*\/>/g, (tag) => {
    const link = byCell.get(/\sref="([^"]*)"/.exec(tag)?.[1] ?? "");
    const target = link?.to && sheets.find(({ sheet }) => sheet.id === link.to!.sheetId);
    const tooltip = link?.tooltip ? ` tooltip="${escaped(link.tooltip)}"` : "";
    return tag
      .replace(/(\slocation=")([^"]*)!([^"!]*)"/, (_, open, sheet, cell) => {
        const at = target && escaped(target.sheet.name) === sheet ? target.here[link!.to!.key] : undefined;
        return `${open}${quoted(sheet)}!${at ?? cell}"`;
      })
      .replace(/\s*\/>$/, `${tooltip}/>`);
  });
}

/** The engine takes a cell for a formula or for a link. */
const onFormula = ({ root, formulas }: Contents): boolean => {
  const cells = new Set(linkElements(root).map(({ attributes }) => attributes.ref));
  return cells.size > 0 && formulas.some(({ address }) => cells.has(address));
};

export const links = bySheet<readonly KeptLink[]>({
  name: "links",
  read: linksOf,
  write: withLinks,
  joined:
    ({ ids }) =>
    (kept) =>
      kept.map(({ to, ...link }) => {
        const sheetId = to && ids.get(to.sheetId);
        return sheetId === undefined ? link : { ...link, to: { ...to!, sheetId } };
      }),
  lost: [["links on cells with a formula", (_, { sheets }) => sheets.some(onFormula)]],
});
