import { relationsOf, relationsPath, textOf } from "./parts";
import type { Parts } from "./unzip";
import { encoded } from "./xml";

/** Changes to the parts of a package, with their content types and relationships. */

const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const noRelations = '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>';

const before = (xml: string, end: string, text: string) => xml.replace(end, () => text + end);

export const put = (parts: Parts, path: string, xml: string): unknown => parts.set(path, encoded(xml));

/** What is not changed stays byte for byte. */
export function edit(parts: Parts, path: string, change: (xml: string) => string): void {
  const xml = textOf(parts, path);
  const now = change(xml);
  if (now !== xml) put(parts, path, now);
}

const types = "[Content_Types].xml";

export const declare = (parts: Parts, path: string, type: string): unknown =>
  edit(parts, types, (xml) => before(xml, "</Types>", `<Override PartName="/${path}" ContentType="${type}"/>`));

/** Sets the default content type of a file extension. */
export const declareEnding = (parts: Parts, ending: string, type: string): unknown =>
  textOf(parts, types).includes(`Extension="${ending}"`) ||
  edit(parts, types, (xml) =>
    xml.replace(/<(?:\w+:)?Types\b[^>]*>/, (open) => `${open}<Default Extension="${ending}" ContentType="${type}"/>`),
  );

const relationsType = "application/vnd.openxmlformats-package.relationships+xml";

/** Adds the content type of relationship parts. */
export const declareRelations = (parts: Parts): unknown => declareEnding(parts, "rels", relationsType);

/** Removes the content types of parts that are gone. */
export const undeclare = (parts: Parts, gone: ReadonlySet<string>): unknown =>
  edit(parts, types, (xml) =>
    xml.replace(/<(?:\w+:)?Override\b[^>]*>/g, (tag) => (gone.has(/PartName="\/?([^"]*)"/.exec(tag)?.[1] ?? "") ? "" : tag)),
  );

/** Removes a relationship. */
export const unrelate = (parts: Parts, from: string, id: string): unknown =>
  edit(parts, relationsPath(from), (xml) =>
    xml.replace(/<(?:\w+:)?Relationship\s[^>]*>/g, (tag) => (/\sId="([^"]*)"/.exec(tag)?.[1] === id ? "" : tag)),
  );

/** Removes a part that only one other refers to, with its relationship and content type. */
export function dropPart(parts: Parts, from: string, id: string, path: string): void {
  unrelate(parts, from, id);
  parts.delete(path);
  parts.delete(relationsPath(path));
  undeclare(parts, new Set([path, relationsPath(path)]));
}

/** Removes all parts whose names match, with their relationships and content types. */
export function dropParts(parts: Parts, named: (path: string) => boolean): void {
  const gone = new Set([...parts.keys()].filter(named));
  if (!gone.size) return;
  for (const path of gone) parts.delete(path);
  undeclare(parts, gone);
  for (const from of ["", ...parts.keys()])
    for (const { id, path, outside } of relationsOf(parts, from)) if (!outside && gone.has(path)) unrelate(parts, from, id);
}

/** Adds a relationship and returns its id. `kind` is the last word of its type, or the whole type. */
export function relate(parts: Parts, from: string, kind: string, target: string): string {
  const path = relationsPath(from);
  const names = new Set(relationsOf(parts, from).map(({ id }) => id));
  let number = names.size + 1;
  while (names.has(`rId${number}`)) number++;
  const type = kind.includes(":") ? kind : `${office}/${kind}`;
  declareRelations(parts);
  const relation = `<Relationship Id="rId${number}" Type="${type}" Target="${target}"/>`;
  put(parts, path, before(textOf(parts, path) || noRelations, "</Relationships>", relation));
  return `rId${number}`;
}
