import { findSpecies, gravityAt, indexed, otherNames, speciesNames } from "../../wood/species";
import { type Given, isRef } from "../formula";
import { type Row, refText, refTo } from "../place";
import { firstRow, tableName, width } from "./baketable";

/** Woods by their usual names and as an index has them, with their oven-dry specific gravity. */
export const woods: readonly (readonly [name: string, gravity: number])[] = [
  ...new Set([...speciesNames, ...otherNames, ...speciesNames.map(indexed)]),
].map((name) => [name, gravityAt(findSpecies(name), 0)]);

/** GRAVITY as a look-up in the list; undefined where the name is no cell or word, or another state of the wood is asked for. */
export function woodLookup(given: Readonly<Record<string, Given>>, from: string, row: Row): string | undefined {
  const { species: name, at } = given;
  if (at !== undefined || (!isRef(name) && typeof name !== "string")) return undefined;
  const asked = isRef(name) ? refText(name, from, row) : `"${name}"`;
  const list = (column: number) => refText({ ...refTo(tableName, firstRow + 1, width + column, woods.length), whole: true }, from, row);
  return `INDEX(${list(1)},MATCH(${asked},${list(0)},0))`;
}
