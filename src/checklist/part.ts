import { type Form, findPart, placeOf as place, readPart, writePart } from "../../shared/part";
import { type List, listSchema } from "./schema";

/** Where the list is kept inside a workbook. */
export const namespace = "urn:porewise:checklist";
const form: Form<List> = { root: "checklist", namespace, version: 1, schema: listSchema };

export const placeOf = (number: number): string => place(namespace, number);

export type Read =
  | { readonly state: "read"; readonly list: List }
  | { readonly state: "newer"; readonly version: number; readonly xml: string }
  | { readonly state: "damaged"; readonly xml: string };

export const write = (list: List, at = namespace): string => writePart(form, list, at);

export function read(xml: string, at: string, parser: Pick<DOMParser, "parseFromString">): Read {
  const part = readPart(form, xml, at, parser);
  return part.state === "read" ? { state: "read", list: part.document } : part;
}

export interface Found {
  /** The place to write to. */
  readonly place: string;
  readonly xml?: string;
  readonly list?: List;
  /** Parts that are kept as they are. */
  readonly unread: readonly Exclude<Read, { state: "read" }>[];
}

/** Looks through the places for a list; undefined where no place is left. */
export async function find(
  ask: (place: string) => Promise<string | undefined>,
  parser: Pick<DOMParser, "parseFromString">,
): Promise<Found | undefined> {
  const found = await findPart(form, ask, parser);
  return found && { place: found.place, xml: found.xml, list: found.document, unread: found.unread };
}
