import type { Cells } from "../../../shared/columns";
import { isFault } from "../../../shared/outcome";
import type { Shop } from "../../../shared/settings";
import { fromInternal } from "../../../shared/unit";
import { call } from "../../catalogue";
import { bake } from "../../cure/bake";
import { thickest } from "../../cure/settings";
import { type Given, isRef } from "../formula";
import { type Ref, type Row, refText, refTo } from "../place";

/**
 * Minutes in the oven by thickness and by how wide the piece is for it, for a program without the functions. Between two lines
 * the longer time counts, so that the core is never short of heat.
 */

export const tableName = "Bake minutes";
const ratios = [8, 4, 3, 2, 1.5, 1.25, 1.1, 1] as const;
/** Dense wood takes a little longer than light wood: a few percent. */
const gravity = 0.65;
/** Length in units of thickness at which the ends no longer matter. */
const long = 20;

export interface BakeTable {
  /** Thicknesses, the greatest first, and the minutes of each. */
  readonly rows: readonly (readonly [thickness: number, ...minutes: (number | string)[]])[];
  readonly unit: string;
}

export function bakeTable(shop: Shop, cells: Cells): BakeTable {
  const { length } = shop.units;
  const step = shop.units.system === "US" ? 1 / 16 : 2;
  const most = Math.round(Number(fromInternal(shop.get(thickest) as number, length)) / step);
  const least = shop.units.system === "US" ? 4 : 3;
  const sizes = Array.from({ length: Math.max(0, most - least + 1) }, (_, i) => (most - i) * step);
  const minutes = (t: number, ratio: number): number | string => {
    const [[answer]] = call(bake, [[[t]], [[t * ratio]], [[t * long]], [[gravity]], cells]);
    return isFault(answer) ? answer.error : typeof answer === "number" ? Math.ceil(answer) : "";
  };
  return { rows: sizes.map((t) => [t, ...ratios.map((ratio) => minutes(t, ratio))]), unit: length.name };
}

/** Columns of the table, and one of room. */
export const width = 1 + ratios.length + 1;
export const headings = (unit: string): readonly (string | number)[] => [`thickness, ${unit}`, ...ratios];
export const firstRow = 4;
/** The line with the ratios of each table, counted from 0: they stand one below the other. */
export const headingRows = (tables: readonly BakeTable[]): number[] =>
  tables.map((_, index) => tables.slice(0, index).reduce((row, { rows }) => row + rows.length + 2, firstRow));

/** BAKE as a look-up in the table that has its ratios in this line; undefined where the piece is no cell or number. */
export function bakeLookup(
  table: BakeTable,
  top: number,
  given: Readonly<Record<string, Given>>,
  from: string,
  row: Row,
): string | undefined {
  const texts = (["thickness", "width", "length"] as const).flatMap((name) => {
    const value = given[name];
    return value === undefined ? [] : [isRef(value) ? refText(value, from, row) : typeof value === "number" ? String(value) : undefined];
  });
  if (given.thickness === undefined || texts.includes(undefined) || !table.rows.length) return undefined;
  const list = texts.join(",");
  const second = texts.length === 3 ? `MEDIAN(${list})` : `MAX(${list})`;
  const at = (ref: Ref) => refText({ ...ref, whole: true }, from, row);
  const rows = table.rows.length;
  const thicknesses = at(refTo(tableName, top + 1, 0, rows));
  const across = at(refTo(tableName, top, 1, 1, ratios.length));
  const body = at(refTo(tableName, top + 1, 1, rows, ratios.length));
  const found = `INDEX(${body},MATCH(MIN(${list}),${thicknesses},-1),MATCH(MIN(${ratios[0]},ROUND(${second}/MIN(${list}),6)),${across},-1))`;
  return `IF(COUNT(${list})=${texts.length},IF(MIN(${list})>0,${found},NA()),NA())`;
}
