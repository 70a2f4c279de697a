import type { Given } from "./given";

/**
 * The values of one row at a time, seen as the object that `run` takes. It is made once for a contract and looks into the
 * columns as it is read, so that a row costs no object and no writing: ten thousand rows in one call depend on it.
 */
export interface View {
  readonly given: Given;
  /** The row that is looked at. */
  readonly at: { row: number };
  /** For each name, the values of every row, or one value that serves all. */
  look(values: readonly ArrayLike<unknown>[]): void;
}

interface Source {
  values: ArrayLike<unknown>;
  /** All bits of a row's number, or none of them where one value serves every row. */
  mask: number;
}

export function viewOf(names: readonly string[]): View {
  const at = { row: 0 };
  // A prototype of its own: engines share the layout of like objects, and give up on those that differ in their getters.
  const given: Given = Object.create({});
  const sources = names.map((name) => {
    const source: Source = { values: [], mask: 0 };
    Object.defineProperty(given, name, { enumerable: true, get: () => source.values[at.row & source.mask] });
    return source;
  });
  return {
    given,
    at,
    look(values) {
      sources.forEach((source, i) => {
        source.values = values[i];
        source.mask = values[i].length > 1 ? -1 : 0;
      });
    },
  };
}
