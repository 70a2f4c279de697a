import type { XmlElement } from "@rgrove/parse-xml";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import type { Parts } from "../../../shared/xlsx/unzip";
import { allOf, childrenOf, read } from "../../../shared/xlsx/xml";

/** A chart or a picture as the drawing of a sheet has it. */
export interface Drawn {
  readonly anchor: XmlElement;
  readonly properties: XmlElement;
  /** The path of a chart's part; a picture has none. */
  readonly path?: string;
}

/** All of a drawing, in its order. */
export function drawnIn(parts: Parts, drawing: string): Drawn[] {
  const relations = relationsOf(parts, drawing);
  return childrenOf(read(textOf(parts, drawing))).flatMap((anchor) => {
    const id = allOf(anchor, "chart")[0]?.attributes["r:id"];
    const path = relations.find((one) => one.id === id)?.path;
    const properties = allOf(anchor, "cNvPr")[0];
    return properties ? [{ anchor, properties, path: path && parts.has(path) ? path : undefined }] : [];
  });
}

/** The part that draws on a sheet. */
export const drawingOf = (parts: Parts, path: string): string | undefined =>
  relationsOf(parts, path).find(({ kind }) => kind === "drawing")?.path;
