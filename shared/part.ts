import type * as z from "zod/mini";

/** A document kept inside a workbook: JSON in an XML part of its own namespace, with the version of its form. */
export interface Form<T> {
  readonly root: string;
  readonly namespace: string;
  readonly version: number;
  readonly schema: { safeParse(value: unknown): z.core.util.SafeParseResult<T> };
}

export type Read<T> =
  | { readonly state: "read"; readonly document: T }
  | { readonly state: "newer"; readonly version: number; readonly xml: string }
  | { readonly state: "damaged"; readonly xml: string };

type Parser = Pick<DOMParser, "parseFromString">;

const escaped: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

/** The last two characters of the first plane may stand in JSON and never in XML. */
const safe = (json: string) =>
  json
    .replace(/[\uFFFE\uFFFF\u007F-\u009F]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`)
    .replace(/[&<>]/g, (c) => escaped[c]);

export const writePart = <T>({ root, version }: Form<T>, document: T, place: string): string =>
  `<${root} xmlns="${place}" version="${version}">${safe(JSON.stringify(document))}</${root}>`;

/** Reads a part; the parser is the caller's, since only a page has one. */
export function readPart<T>({ root: name, version, schema }: Form<T>, xml: string, place: string, parser: Parser): Read<T> {
  const damaged = { state: "damaged", xml } as const;
  try {
    const root = parser.parseFromString(xml, "application/xml").documentElement;
    if (root.localName !== name || root.namespaceURI !== place) return damaged;
    const made = Number(root.getAttribute("version"));
    if (!Number.isInteger(made) || made < 1) return damaged;
    if (made > version) return { state: "newer", version: made, xml };
    const found = schema.safeParse(JSON.parse(root.textContent ?? ""));
    return found.success ? { state: "read", document: found.data } : damaged;
  } catch {
    return damaged;
  }
}

export interface Found<T> {
  /** The place to write to. */
  readonly place: string;
  readonly xml?: string;
  readonly document?: T;
  /** Parts that are kept as they are. */
  readonly unread: readonly Exclude<Read<T>, { state: "read" }>[];
}

/** A part that cannot be read stays as it is, and a fresh document goes into the next place. */
const places = 9;
export const placeOf = (namespace: string, number: number): string => (number === 1 ? namespace : `${namespace}:${number}`);

/** Looks through the places for a document; what cannot be read is passed over, never written to. Undefined: no place is left. */
export async function findPart<T>(
  form: Form<T>,
  ask: (place: string) => Promise<string | undefined>,
  parser: Parser,
): Promise<Found<T> | undefined> {
  const unread: Found<T>["unread"][number][] = [];
  for (let number = 1; number <= places; number++) {
    const place = placeOf(form.namespace, number);
    const xml = await ask(place);
    if (xml === undefined) return { place, unread };
    const part = readPart(form, xml, place, parser);
    if (part.state === "read") return { place, xml, document: part.document, unread };
    unread.push(part);
  }
  return undefined;
}
