import { declare, put, relate } from "./package";
import { relationsOf, textOf } from "./parts";
import type { Parts } from "./unzip";
import { escaped, read } from "./xml";

/** Custom XML parts of a workbook, such as the safety checklist, by their namespace. */
export type Documents = Readonly<Record<string, string>>;

const dataStore = "http://schemas.openxmlformats.org/officeDocument/2006/customXml";
const propertiesType = "application/vnd.openxmlformats-officedocument.customXmlProperties+xml";

/** The namespace of a document: that of its root element. */
function namespaceOf(xml: string): string {
  const { name, attributes } = read(xml);
  const prefix = name.includes(":") ? name.slice(0, name.indexOf(":")) : "";
  return attributes[prefix ? `xmlns:${prefix}` : "xmlns"] ?? "";
}

/** The documents of a workbook; of two with one namespace the second keeps a number, so that none is lost. */
export function documentsOf(parts: Parts, workbook: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const { kind, path } of relationsOf(parts, workbook)) {
    if (kind !== "customXml" || !parts.has(path)) continue;
    const xml = textOf(parts, path);
    const namespace = namespaceOf(xml);
    let key = namespace;
    for (let n = 2; key in found; n++) key = `${namespace}#${n}`;
    found[key] = xml;
  }
  return found;
}

/** An item id (GUID) that is the same whenever the same document is saved at the same place. */
const identity = (number: number) => `{504F5245-5749-5345-8000-${number.toString(16).toUpperCase().padStart(12, "0")}}`;

/** Puts documents into a package beside its workbook, and beside those that it holds already. */
export function addDocuments(parts: Parts, workbook: string, documents: Documents): void {
  let number = 0;
  for (const xml of Object.values(documents)) {
    do number++;
    while (parts.has(`customXml/item${number}.xml`) || parts.has(`customXml/itemProps${number}.xml`));
    const item = `customXml/item${number}.xml`;
    const properties = `customXml/itemProps${number}.xml`;
    const namespace = escaped(namespaceOf(xml));
    put(parts, item, xml);
    put(
      parts,
      properties,
      `<ds:datastoreItem xmlns:ds="${dataStore}" ds:itemID="${identity(number)}"><ds:schemaRefs>${namespace ? `<ds:schemaRef ds:uri="${namespace}"/>` : ""}</ds:schemaRefs></ds:datastoreItem>`,
    );
    relate(parts, item, "customXmlProps", `itemProps${number}.xml`);
    relate(parts, workbook, "customXml", `../${item}`);
    declare(parts, properties, propertiesType);
  }
}
