import type { SheetPart } from "../parts";
import type { Parts } from "../unzip";

/** A workbook's parts while its structure is changed. */
export interface Book {
  readonly parts: Parts;
  /** The workbook's own part. */
  readonly path: string;
  sheets: SheetPart[];
}
