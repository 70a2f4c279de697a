import type { Documents } from "../../../shared/xlsx/documents";
import type { Looks } from "./looks";
import type { Print } from "./print";
import type { Properties } from "./properties";
import type { SheetBeside } from "./sheet";

/** What a workbook holds beside what the engine keeps. */
export interface Beside {
  readonly documents: Documents;
  /** The file that the workbook came from, as it came. */
  readonly file?: Uint8Array;
  /** By the engine's names of sheets, which stay when a person gives a sheet another name. */
  readonly print: Readonly<Record<string, Print>>;
  /** By the same names. */
  readonly sheets?: Readonly<Record<string, SheetBeside>>;
  readonly properties?: Properties;
  readonly looks?: Looks;
}
