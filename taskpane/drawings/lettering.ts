import { letters } from "../../shared/xlsx/letters";
import type { Part } from "../../src/plan/parts";
import type { Plan, Planned } from "../../src/plan/planned";

/** How the pieces of one row are marked: a shade, and a letter for whoever cannot tell shades. */
export interface Kind {
  readonly letter: string;
  readonly mark: string;
  readonly label: string;
}

/** Shades, ordered so that neighbors in a list differ on paper too. */
const shades = 6;
/** Dark shades, which need light letters. */
const dark = new Set(["kind-1", "kind-3"]);

/** The class of a letter on a mark. */
export const letterOn = (mark: string): string => (mark.split(" ").some((own) => dark.has(own)) ? "light" : "");

/** The rows of a plan in the list's order, by their numbers there: a row has its letter in every load. */
export function kindsOf({ loads }: Plan): ReadonlyMap<number, Kind> {
  const rows = new Map(loads.flatMap(({ shares }) => shares.map(({ part: { row } }) => [row.index, row.label] as const)));
  return new Map(
    [...rows].sort(([a], [b]) => a - b).map(([index, label], at) => [index, { letter: letters(at), mark: `kind-${at % shades}`, label }]),
  );
}

/** Rows of a load that a legend tells one by one. */
const listed = 40;

export interface Line {
  readonly mark: string;
  readonly words: string;
  readonly letter?: string;
}

/** What a load holds, a line a row, with counts. */
export function contents({ shares }: Planned, kinds: ReadonlyMap<number, Kind>): Line[] {
  const lines = shares.slice(0, listed).map(({ part: { row }, count }) => {
    const { mark, letter, label } = kinds.get(row.index)!;
    return { mark: `kind ${mark}`, letter, words: `${label}: ${count}` };
  });
  const rest = shares.slice(listed);
  if (!rest.length) return lines;
  const many = rest.reduce((sum, { count }) => sum + count, 0);
  return [...lines, { mark: "none", words: `and ${many} more pieces of ${rest.length} more rows` }];
}

export const kindOf = (kinds: ReadonlyMap<number, Kind>, { row }: Part): Kind => kinds.get(row.index)!;
