import { longestSheetName, sheetKey } from "../../../shared/xlsx/sheetname";
import { freeName } from "../../freename";
import type { SheetData } from "./sheetformulas";

/** A free name, which is taken from then on. */
export function claimed(name: string, taken: Set<string>): string {
  const free = freeName(name, (one) => taken.has(sheetKey(one)), longestSheetName);
  taken.add(sheetKey(free));
  return free;
}

/** Names for sheets that join others, by the names they had: those that are free stay. */
export function namesFor(joining: readonly SheetData[], there: readonly SheetData[]): ReadonlyMap<string, string> {
  const before = new Set(there.map(({ name }) => sheetKey(name)));
  const taken = new Set([...before, ...joining.map(({ name }) => sheetKey(name))]);
  return new Map(joining.map(({ name }) => [sheetKey(name), before.has(sheetKey(name)) ? claimed(name, taken) : name]));
}
