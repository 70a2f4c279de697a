import { parseXml, XmlElement } from "@rgrove/parse-xml";
import { Unreadable } from "./unzip";

/** XML as text with a tree over it: elements know their offsets, so that all unchanged text stays as it is. */

/** Decodes UTF-8 and keeps a byte order mark. */
const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** The encoding of a part that is not in UTF-8. */
function otherSpelling(bytes: Uint8Array): string | undefined {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0x3c && second === 0)) return "utf-16le";
  if ((first === 0xfe && second === 0xff) || (first === 0 && second === 0x3c)) return "utf-16be";
  const said = /^[^<]{0,3}<\?xml[^>]*?\sencoding\s*=\s*["']([\w-]+)/.exec(decoder.decode(bytes.subarray(0, 120)))?.[1];
  return said && !/^utf-?8$/i.test(said) ? said : undefined;
}

/** The text of a part; one in another encoding reads as if it were in UTF-8, which it is once it is changed. */
export function decoded(bytes: Uint8Array): string {
  const other = otherSpelling(bytes);
  if (!other) return decoder.decode(bytes);
  try {
    return new TextDecoder(other).decode(bytes).replace(/^(<\?xml[^>]*?\sencoding\s*=\s*["'])[\w-]+/, "$1UTF-8");
  } catch {
    throw new Unreadable("one of its parts is spelled in a way that cannot be read: save it again in your spreadsheet program");
  }
}
export const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The parser counts CRLF as one character: a space in place of CR keeps the offsets right. */
export function read(xml: string): XmlElement {
  try {
    const root = parseXml(xml.replace(/\r\n/g, " \n"), { includeOffsets: true, ignoreUndefinedEntities: true }).root;
    if (root) return root;
  } catch {
    // Said below.
  }
  throw new Unreadable("one of its parts is damaged: save it again in your spreadsheet program");
}

/** The name without its prefix: programs differ in the prefixes they choose. */
export const nameOf = ({ name }: XmlElement): string => name.slice(name.indexOf(":") + 1);

export const childrenOf = (parent: XmlElement, name?: string): XmlElement[] =>
  parent.children.filter((child): child is XmlElement => child instanceof XmlElement && (name === undefined || nameOf(child) === name));

export const childOf = (parent: XmlElement, name: string): XmlElement | undefined => childrenOf(parent, name)[0];

/** Every element of a name below another, in the order of the file. */
export const allOf = (parent: XmlElement, name: string): XmlElement[] =>
  childrenOf(parent).flatMap((child) => [...(nameOf(child) === name ? [child] : []), ...allOf(child, name)]);

export const isTrue = (attribute: string | undefined): boolean => attribute === "1" || attribute === "true";

/** Where the start tag of an element ends, and whether it is the whole element. */
export function openingOf(xml: string, { start }: XmlElement): { readonly end: number; readonly closed: boolean } {
  const tag = /[^"'>]*(?:"[^"]*"[^"'>]*|'[^']*'[^"'>]*)*>/y;
  tag.lastIndex = start;
  const end = start + (tag.exec(xml)?.[0].length ?? 0);
  return { end, closed: xml[end - 2] === "/" };
}

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** The value of an attribute, unescaped. */
export const attributeText = (written: string): string => read(`<a b="${written}"/>`).attributes.b;

/** Text of an element or an attribute, unescaped. */
export const plainText = (written: string): string => (written.includes("&") ? attributeText(written.replace(/"/g, "&quot;")) : written);

/** Text for between tags or quotes; what XML cannot hold is written the way spreadsheet files do. */
export const escaped = (text: string): string =>
  text
    .replace(/_(?=x[0-9A-F]{4}_)/gi, "_x005F_")
    .replace(/[\u0000-\u0008\u000B-\u001F\uFFFE\uFFFF]/g, (c) => `_x${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`)
    .replace(/[&<>"]/g, (c) => entities[c]);

export const unescaped = (text: string): string => text.replace(/_x([0-9A-F]{4})_/gi, (_, code) => String.fromCharCode(parseInt(code, 16)));

/** New elements are written without a prefix; this adds the one that the part uses. */
export const prefixed = (xml: string, prefix: string): string => (prefix ? xml.replace(/<(\/?)(?=\w)/g, `<$1${prefix}`) : xml);

/** One change of a text: replaces what is from `start` to `end`. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with all changes made; none may overlap another. */
export function changed(xml: string, changes: readonly Change[]): string {
  let out = "";
  let at = 0;
  for (const { start, end, text } of [...changes].sort((a, b) => a.start - b.start || a.end - b.end)) {
    out += xml.slice(at, start) + text;
    at = end;
  }
  return out + xml.slice(at);
}

/** The text with every element of a name rewritten; undefined leaves one unchanged. */
export const withEach = (xml: string, name: string, write: (element: XmlElement) => string | undefined): string =>
  xml.includes(name)
    ? changed(
        xml,
        allOf(read(xml), name).flatMap((element) => {
          const text = write(element);
          return text === undefined ? [] : [{ start: element.start, end: element.end, text }];
        }),
      )
    : xml;
