import { addDocuments, type Documents, documentsOf } from "../../../shared/xlsx/documents";
import { put } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import type { Parts } from "../../../shared/xlsx/unzip";

/** The documents of a workbook that are others now, each in the part that it has. */
export function withDocuments(parts: Parts, workbook: string, documents: Documents): void {
  const there = documentsOf(parts, workbook);
  const added: Record<string, string> = {};
  for (const [namespace, xml] of Object.entries(documents)) {
    const own = there[namespace];
    if (own === xml) continue;
    const path =
      own &&
      relationsOf(parts, workbook).find((one) => one.kind === "customXml" && parts.has(one.path) && textOf(parts, one.path) === own)?.path;
    if (path) put(parts, path, xml);
    else added[namespace] = xml;
  }
  if (Object.keys(added).length) addDocuments(parts, workbook, added);
}
