import type { Outcome } from "../../shared/outcome";

/** Cached values: the results when the book was last calculated. */
export interface Cached {
  value(sheet: string, row: number, column: number): Outcome | undefined;
  /** How many cells a formula filled. */
  spill(sheet: string, row: number, column: number): { readonly rows: number; readonly columns: number };
}

export const nothingCached: Cached = { value: () => undefined, spill: () => ({ rows: 1, columns: 1 }) };
