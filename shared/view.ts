import type { Given } from "./given";

/**
 * The values of one row at a time, seen as the object that `run` takes. It is made once for a contract and looks into the
 * columns as it is read, so that a row costs no object and no writing: ten thousand rows in one call depend on it.
 */
export interface View {
  readonly given: Given;
  /** For each name, the values it looks into, and how far a row moves in them: 0 where one value serves every row. */
  look(values: readonly ArrayLike<unknown>[], strides: readonly number[]): void;
  at(row: number): void;
}

export function viewOf(names: readonly string[]): View {
  let values: readonly ArrayLike<unknown>[] = [];
  let strides: readonly number[] = [];
  let row = 0;
  const given: Given = {};
  names.forEach((name, i) => {
    Object.defineProperty(given, name, { enumerable: true, get: () => values[i][row * strides[i]] });
  });
  return {
    given,
    look(v, s) {
      values = v;
      strides = s;
    },
    at(r) {
      row = r;
    },
  };
}
