import { declare, put, relate } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import type { FileMade, FileRead, Piece } from "./piece";

/** What a file says of itself: its title, who made it and when, and what somebody added. As its parts stand. */
export interface Properties {
  readonly core?: string;
  readonly custom?: string;
}

const packages = "http://schemas.openxmlformats.org/package/2006/relationships/metadata";
const places = {
  core: ["docProps/core.xml", `${packages}/core-properties`, "application/vnd.openxmlformats-package.core-properties+xml"],
  custom: ["docProps/custom.xml", "custom-properties", "application/vnd.openxmlformats-officedocument.custom-properties+xml"],
} as const;

function propertiesOf({ workbook: { parts } }: FileRead): Properties {
  const relations = relationsOf(parts, "");
  const part = (kind: string) => {
    const path = relations.find((one) => one.kind === kind)?.path;
    return path && parts.has(path) ? textOf(parts, path).replace(/^\uFEFF/, "") : undefined;
  };
  return { core: part("core-properties"), custom: part("custom-properties") };
}

/** The hour of the last change is now; who made it is not known here. */
const changedNow = (xml: string): string =>
  xml
    .replace(/(<dcterms:modified[^>]*>)[^<]*/, (_, open) => `${open}${new Date().toISOString().slice(0, 19)}Z`)
    .replace(/<cp:lastModifiedBy>[^<]*<\/cp:lastModifiedBy>/, "");

function addProperties({ parts }: FileMade, { core, custom }: Properties = {}): void {
  for (const [kind, xml] of Object.entries({ core: core && changedNow(core), custom })) {
    if (!xml) continue;
    const [path, relation, type] = places[kind as keyof typeof places];
    put(parts, path, xml);
    relate(parts, "", relation, path);
    declare(parts, path, type);
  }
}

export const properties: Piece<Properties> = { name: "properties", read: propertiesOf, write: addProperties };
