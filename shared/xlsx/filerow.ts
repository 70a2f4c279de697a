import type { At, Block } from "./address";

/** Where something stands in the text of a part. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A formula of a cell as its file keeps it. */
export interface FileFormula extends Span {
  readonly text: string;
  readonly kind: "plain" | "array" | "shared" | "other";
  /** The cells that an array formula fills, or those that share one. */
  readonly block?: Block;
  /** A dynamic array formula (cm), which fills as many cells as it needs. */
  readonly dynamic: boolean;
  readonly shared?: string;
}

/** An element that holds others: its start tag ends at `open`. */
interface Holding extends Span {
  readonly prefix: string;
  readonly open: number;
  readonly closed: boolean;
}

export interface FileCell extends At, Holding {
  readonly address: string;
  readonly type: string;
  /** Style index (s): its place in cellXfs. */
  readonly look: number;
  readonly value: string | undefined;
  /** Where the value stands, with its tags. */
  readonly shown?: Span;
  readonly formula?: FileFormula;
}

export interface FileRow extends Holding {
  readonly row: number;
  readonly hidden: boolean;
  /** As the file says it; undefined where it says nothing. */
  readonly height?: number;
  readonly fixed: boolean;
  /** Style index of cells without an element of their own. */
  readonly look: number;
  /** Outline level, and whether the group beside it is collapsed. */
  readonly level: number;
  readonly folds: boolean;
  readonly cells: readonly FileCell[];
}
