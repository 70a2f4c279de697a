import type { Block } from "../../../shared/host";

export type Cell = Block["cells"][number][number];

/** The parts of the workbook that a record goes into, as typed; a missing one gets nothing. */
export interface Book {
  /** The heading of the Run Log and its rows. */
  readonly log?: Block;
  /** The rows of the Resin Book: date, added, dye added, taken up. */
  readonly resin?: Block;
  /** The cost lines of the Price Tag: item, quantity, price, unit. */
  readonly costs?: Block;
  readonly pieces?: Block;
  readonly spoiled?: Block;
}

/** One thing that will be written: where, and in words. */
export interface Entry {
  readonly sheet: string;
  readonly words: readonly string[];
}

export interface Writing {
  readonly blocks: readonly Block[];
  readonly entries: readonly Entry[];
  /** Why something is not written. */
  readonly missing: readonly string[];
}
