import { sheetKey } from "./needs";
import type { SheetData } from "./places";

/** Longer names of sheets are refused by other programs. */
const longest = 31;

function numbered(name: string, number: number): string {
  const end = ` ${number}`;
  // A letter of two halves is kept whole or not at all.
  return name.slice(0, longest - end.length).replace(/[\uD800-\uDBFF]$/, "") + end;
}

/** A name that is not taken, with a number from 2 on if need be; from here on it is taken. */
export function freeName(name: string, taken: Set<string>): string {
  let free = name;
  for (let number = 2; taken.has(sheetKey(free)); number++) free = numbered(name, number);
  taken.add(sheetKey(free));
  return free;
}

/** Names for sheets that join others, by the names they had: those that are free stay. */
export function namesFor(joining: readonly SheetData[], there: readonly SheetData[]): ReadonlyMap<string, string> {
  const before = new Set(there.map(({ name }) => sheetKey(name)));
  const taken = new Set([...before, ...joining.map(({ name }) => sheetKey(name))]);
  return new Map(joining.map(({ name }) => [sheetKey(name), before.has(sheetKey(name)) ? freeName(name, taken) : name]));
}
