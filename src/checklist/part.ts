import { type List, listSchema } from "./schema";

/** Where the list is kept inside a workbook: a custom XML part of its own namespace, with the version of its form. */
export const namespace = "urn:porewise:checklist";
const version = 1;

/** A part that cannot be read stays as it is, and a fresh list goes into the next place. */
const places = 9;
export const placeOf = (number: number): string => (number === 1 ? namespace : `${namespace}:${number}`);

export type Read =
  | { readonly state: "read"; readonly list: List }
  | { readonly state: "newer"; readonly version: number; readonly xml: string }
  | { readonly state: "damaged"; readonly xml: string };

const escaped: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

/** The last two characters of the first plane may stand in JSON and never in XML. */
const safe = (json: string) =>
  json
    .replace(/[\uFFFE\uFFFF\u007F-\u009F]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`)
    .replace(/[&<>]/g, (c) => escaped[c]);

export const write = (list: List, place = namespace): string =>
  `<checklist xmlns="${place}" version="${version}">${safe(JSON.stringify(list))}</checklist>`;

/** Reads a part; the parser is the caller's, since only a page has one. */
export function read(xml: string, place: string, parser: Pick<DOMParser, "parseFromString">): Read {
  const damaged = { state: "damaged", xml } as const;
  try {
    const root = parser.parseFromString(xml, "application/xml").documentElement;
    if (root.localName !== "checklist" || root.namespaceURI !== place) return damaged;
    const made = Number(root.getAttribute("version"));
    if (!Number.isInteger(made) || made < 1) return damaged;
    if (made > version) return { state: "newer", version: made, xml };
    const list = listSchema.safeParse(JSON.parse(root.textContent ?? ""));
    return list.success ? { state: "read", list: list.data } : damaged;
  } catch {
    return damaged;
  }
}

export interface Found {
  /** The place to write to. */
  readonly place: string;
  readonly xml?: string;
  readonly list?: List;
  /** Parts that are kept as they are. */
  readonly unread: readonly Exclude<Read, { state: "read" }>[];
}

/** Looks through the places for a list; what cannot be read is passed over, never written to. Undefined: no place is left. */
export async function find(
  readPart: (place: string) => Promise<string | undefined>,
  parser: Pick<DOMParser, "parseFromString">,
): Promise<Found | undefined> {
  const unread: Exclude<Read, { state: "read" }>[] = [];
  for (let number = 1; number <= places; number++) {
    const place = placeOf(number);
    const xml = await readPart(place);
    if (xml === undefined) return { place, unread };
    const part = read(xml, place, parser);
    if (part.state === "read") return { place, xml, list: part.list, unread };
    unread.push(part);
  }
  return undefined;
}
