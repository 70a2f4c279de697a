import type { XmlElement } from "@rgrove/parse-xml";
import { declare, edit, put, relate } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { attributeText, childOf, childrenOf, escaped, read } from "../../../shared/xlsx/xml";
import { withoutStandIns } from "../contents/standins";
import { within } from "./losses";
import type { FileMade, FileRead, Piece } from "./piece";

/** The default font and the theme of a workbook, and the number formats that the engine spells differently. */
export interface Looks {
  /** The typeface of the first font, which becomes that of all. */
  readonly typeface?: string;
  readonly size?: string;
  /** Colors and typefaces that charts speak of by their place. */
  readonly theme?: string;
  /** Number formats: as the engine has them, and as the file spelled them. */
  readonly formats: readonly (readonly [engine: string, file: string])[];
}

const stylesPath = "xl/styles.xml";

const fontsOf = (root: XmlElement): XmlElement[] => childrenOf(childOf(root, "fonts") ?? root, "font");

const saysOf = (font: XmlElement | undefined, name: string): string | undefined => font && childOf(font, name)?.attributes.val;

/** Fonts that say no size have the usual one: the engine would take another. */
export function sizedFonts(xml: string): string {
  const size = saysOf(fontsOf(read(xml))[0], "sz");
  if (!size) return xml;
  return xml.replace(/<fonts[\s>].*?<\/fonts>/s, (fonts) =>
    fonts
      .replace(/<font\/>/g, "<font></font>")
      .replace(/<font>(?:(?!<\/font>).)*/gs, (font) => (font.includes("<sz ") ? font : `${font}<sz val="${size}"/>`)),
  );
}

/** Every typeface that a workbook's cells use. */
const typefacesOf = (xml: string): Set<string> => new Set(fontsOf(read(xml)).flatMap((font) => saysOf(font, "name") ?? []));

function looksOf({ workbook: { parts, path }, data: { formats } }: FileRead): Looks {
  const relations = relationsOf(parts, path);
  const part = (kind: string) => relations.find((one) => one.kind === kind)?.path ?? "";
  if (!parts.has(part("styles"))) return { formats: [] };
  const root = read(textOf(parts, part("styles")));
  const fonts = fontsOf(root);
  const spelt = childrenOf(childOf(root, "numFmts") ?? root, "numFmt").flatMap(({ attributes: { numFmtId, formatCode } }) => {
    const engine = formats[Number(numFmtId) + 1];
    return engine && engine !== formatCode ? [[engine, formatCode] as const] : [];
  });
  return {
    typeface: saysOf(fonts[0], "name"),
    size: saysOf(fonts[0], "sz"),
    theme: parts.has(part("theme")) ? textOf(parts, part("theme")) : undefined,
    // Two formats that the engine spells alike cannot be told apart: neither is kept.
    formats: spelt.filter(([engine, file]) => spelt.every(([other, text]) => other !== engine || text === file)),
  };
}

/** Files have ARGB colors of eight digits, the first two the opacity. */
export const solidColors = (xml: string): string => xml.replace(/(<\w+ [^>]*\brgb=")([0-9A-F]{6})"/gi, '$1FF$2"');

function addLooks({ parts, path }: FileMade, { typeface, size, theme, formats }: Looks): void {
  const spelling = new Map(formats);
  edit(parts, stylesPath, (xml) =>
    withoutStandIns(xml)
      .replace(/(<font>.*?<sz val=")[^"]*/s, (own, open) => (size ? open + size : own))
      .replace(/(<name val=")Arial"/g, (own, open) => (typeface ? `${open}${escaped(typeface)}"` : own))
      .replace(/(formatCode=")([^"]*)"/g, (own, open, code) => {
        const file = spelling.get(attributeText(code));
        return file === undefined ? own : `${open}${escaped(file)}"`;
      }),
  );
  if (!theme) return;
  put(parts, "xl/theme/theme1.xml", theme);
  relate(parts, path, "theme", "theme/theme1.xml");
  declare(parts, "xl/theme/theme1.xml", "application/vnd.openxmlformats-officedocument.theme+xml");
}

export const looks: Piece<Looks | undefined> = {
  name: "looks",
  // A file whose styles cannot be read has none to keep.
  read: (file) => (file.isPlain ? undefined : looksOf(file)),
  write: (file, kept) => kept && addLooks(file, kept),
  // The workbook's own spelling of a number format comes first.
  joined(own, from) {
    if (!from?.formats.length) return own;
    const known = new Set(own?.formats.map(([format]) => format));
    return { ...own, formats: [...(own?.formats ?? []), ...from.formats.filter(([format]) => !known.has(format))] };
  },
  lost: [["different fonts (all text gets the first one)", within(/(^|\/)styles\.xml$/, (xml) => typefacesOf(xml).size > 1)]],
};
