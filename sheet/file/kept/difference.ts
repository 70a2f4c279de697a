import type { WorkbookData } from "@odoo/o-spreadsheet";
import { addressOf, type Block, blockOf, cellsOf } from "../../../shared/xlsx/address";

type SheetData = WorkbookData["sheets"][number];

/** Two states of a workbook's data, and a sheet in both. */
export interface Pair {
  readonly before: SheetData | undefined;
  readonly now: SheetData;
}

export const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** Addresses of cells whose content is another. */
export function contentChanges({ before, now }: Pair): string[] {
  if (before === now) return [];
  const [old, own] = [before?.cells ?? {}, now.cells];
  const changed = Object.keys(own).filter((address) => own[address] !== old[address]);
  for (const address of Object.keys(old))
    if (own[address] === undefined && old[address] !== undefined && old[address] !== "") changed.push(address);
  return changed;
}

type Zones = Readonly<Record<string, number>>;
type Pool<T> = Readonly<Record<number, T>>;

/** Cells whose style of one kind changed: the old and the new one. */
export function lookChanges<T>(
  before: Zones = {},
  oldPool: Pool<T>,
  now: Zones = {},
  pool: Pool<T>,
): Map<string, readonly [T | undefined, T | undefined]> {
  const text = new Map<T | undefined, string>();
  const said = (one: T | undefined): string => {
    if (!text.has(one)) text.set(one, JSON.stringify(one) ?? "");
    return text.get(one)!;
  };
  const rest = (zones: Zones, own: Pool<T>, others: Zones, other: Pool<T>) =>
    Object.entries(zones).filter(([zone, number]) => others[zone] === undefined || said(own[number]) !== said(other[others[zone]]));
  const spread = (zones: [string, number][], own: Pool<T>) => {
    const cells = new Map<string, T>();
    for (const [zone, number] of zones) for (const at of cellsOf(blockOf(zone))) cells.set(addressOf(at), own[number]);
    return cells;
  };
  const [left, came] = [spread(rest(before, oldPool, now, pool), oldPool), spread(rest(now, pool, before, oldPool), pool)];
  const changes = new Map<string, readonly [T | undefined, T | undefined]>();
  for (const address of new Set([...left.keys(), ...came.keys()])) {
    const [was, is] = [left.get(address), came.get(address)];
    if (said(was) !== said(is)) changes.set(address, [was, is]);
  }
  return changes;
}

export type { Block, SheetData };
