import { type Arg, isBlank, isEmpty, type Values } from "./argument";
import * as message from "./message";
import { type Cell, Trouble } from "./outcome";
import type { Units } from "./unit";

/** An argument read whole, each cell by the same rule; a blank cell is undefined. */
export function column<T>(arg: Arg<T>): Arg<readonly (T | undefined)[]> {
  const cells = (all: readonly (readonly Cell[])[], units: Units) =>
    all.flat().map((cell, i) => {
      if (isEmpty(cell, arg, units)) return undefined;
      try {
        return arg.read(cell, units);
      } catch (trouble) {
        throw trouble instanceof Trouble ? trouble.about(message.cellNumber(i)) : trouble;
      }
    });
  return { ...arg, range: undefined, say: undefined, read: (cell, units) => cells([[cell]], units), take: cells };
}

/** A row of a table: its values, or why it has none; undefined where it is empty. */
export type RowOf<A> =
  | { readonly given: Values<A>; readonly trouble?: undefined }
  | { readonly given?: undefined; readonly trouble: Trouble };
export type Line<A> = { readonly cells: readonly Cell[]; readonly index: number } & RowOf<A>;

/** A table read whole, a column an argument in the order given; empty rows are left out, a faulty row keeps its fault. */
export function rows<A extends Record<string, Arg>>(label: string, columns: A): Arg<readonly Line<A>[]> {
  const entries = Object.entries(columns);
  const line = (cells: readonly Cell[], units: Units): RowOf<A> => {
    try {
      const given = entries.map(([name, arg], i) => {
        if (!isBlank(cells[i])) return [name, arg.read(cells[i], units)];
        if (arg.optional) return [name, undefined];
        throw message.missing(arg.label, arg.sample(units));
      });
      return { given: Object.fromEntries(given) };
    } catch (trouble) {
      if (trouble instanceof Trouble) return { trouble };
      throw trouble;
    }
  };
  const take = (all: readonly (readonly Cell[])[], units: Units) =>
    all.flatMap((cells, index) => (cells.every(isBlank) ? [] : [{ cells, index, ...line(cells, units) }]));
  return {
    label,
    example: [entries.map(([, arg]) => arg.example)],
    sample: () => `rows of ${entries.map(([, arg]) => arg.label).join(", ")}`,
    read: (cell, units) => take([[cell]], units),
    take,
  };
}
