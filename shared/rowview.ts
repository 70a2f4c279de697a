import type { Given } from "./given";

/** For each name, the values of every row, or one value that serves all. */
export type Values = readonly ArrayLike<unknown>[];

/**
 * The values of one row at a time, seen as the object that `run` takes. It is made once for a contract and looks into the
 * columns as it is read, so that a row costs no object and no writing: ten thousand rows in one call depend on it.
 */
export interface View {
  readonly given: Given;
  /** The row that is looked at. */
  readonly at: { row: number };
  look(values: Values): void;
}

interface Source<V extends ArrayLike<unknown>> {
  values: V;
  /** Bit mask on the row's index: all ones, or 0 where one value serves every row. */
  mask: number;
}

type Getter = (source: Source<any>, at: { readonly row: number }) => () => unknown;

// The same code twice, for the engine's inline caches: a getter that has only ever seen numbers returns them unboxed.
const number: Getter = (source: Source<Float64Array>, at) => () => source.values[at.row & source.mask];
const anything: Getter = (source: Source<ArrayLike<unknown>>, at) => () => source.values[at.row & source.mask];

const isNumbers = (values: ArrayLike<unknown>): boolean => values instanceof Float64Array;

/** Key of a view: which of its columns hold numbers. */
export const kindOf = (values: Values): string => values.map(isNumbers).join();

/** A view for columns such as these. */
export function viewOf(names: readonly string[], first: Values): View {
  const at = { row: 0 };
  // A prototype for each view: JavaScript engines share one hidden class among like objects, and deoptimize where their getters differ.
  const given: Given = Object.create({});
  const sources = names.map((name, i) => {
    const source: Source<ArrayLike<unknown>> = { values: first[i], mask: 0 };
    Object.defineProperty(given, name, { enumerable: true, get: (isNumbers(first[i]) ? number : anything)(source, at) });
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
