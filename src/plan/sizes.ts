import { noAnswer, said, type Trouble } from "../../shared/outcome";
import type { Piece } from "../chamber/layers";
import { type Bath, load } from "../chamber/load";
import type { Section } from "../chamber/section";
import { type Bake, baking, type Oven } from "../cure/heating";
import { refuseThick } from "../cure/piece";
import { roomForResin } from "../resin/uptake";
import { attempt, isTrouble } from "./attempt";
import type { Row, Unplanned } from "./pieces";
import { onShelf, type Shelves } from "./shelves";

export interface Shop extends Bath, Oven, Bake, Shelves {
  readonly chamber: Section;
  readonly height: number;
  readonly thickest: number;
  /** Open seconds of a day. */
  readonly hours: number;
}

/** All rows of one size, which load together. */
export interface Size {
  readonly rows: readonly Row[];
  readonly piece: Piece;
  /** How the chamber takes it, by its lightest wood. */
  readonly load: ReturnType<typeof load>;
  readonly perLoad: number;
  /** Seconds in the oven of the slowest wood. */
  readonly bake: number;
  /** Pieces in the oven at once. */
  readonly batch: number;
}

/** Sides closer than ten picometres are one size: 3/4 in and 19.05 mm load together. */
const keyOf = ({ thickness, width, length }: Piece): string => [thickness, width, length].map((side) => Math.round(side * 1e11)).join();

function grouped(rows: readonly Row[]): Row[][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

/** Seconds in the oven of one wood, which must be one that goes in, takes resin and bakes within a day's open hours. */
function bakeOf(piece: Piece, gravity: number, shop: Shop): number {
  refuseThick(piece, shop.thickest);
  if (onShelf(piece, shop) === 0)
    throw noAnswer`larger than an oven shelf: none fits on ${said("length", shop.ovenWidth)} by ${said("length", shop.ovenDepth)}`;
  roomForResin(1, gravity, 0);
  const bake = baking({ ...piece, gravity, fullness: shop.fullness }, shop);
  if (bake > shop.hours * (1 + 1e-9))
    throw noAnswer`a bake of ${said("minutes", bake)} is longer than the open hours, ${said("hours", shop.hours)}`;
  return bake;
}

function chamberOf(piece: Piece, gravity: number, shop: Shop) {
  const packed = load(shop.chamber, shop.height, piece, gravity, shop);
  return { load: packed, perLoad: packed.most() };
}

/**
 * How the chamber takes the lightest of these woods, lightest first. The lighter the wood, the more it takes up and the
 * more ballast holds it down, so where the lightest does not go in, a heavier may: `out` of them do not, for the reason `why`.
 */
function inChamber(gravities: readonly number[], piece: Piece, shop: Shop) {
  let taken: ReturnType<typeof chamberOf> | undefined;
  let why: Trouble | undefined;
  let out = 0;
  for (let [end, tried] = [gravities.length, 0]; out < end; tried = (out + end) >> 1) {
    const made = attempt(() => chamberOf(piece, gravities[tried], shop));
    if (isTrouble(made)) [why, out] = [made, tried + 1];
    else [taken, end] = [made, tried];
  }
  return { taken, why, out };
}

/** One size, and the rows of it that cannot be planned. */
function sizeOf(rows: readonly Row[], shop: Shop): { size?: Size; unplanned: Unplanned[] } {
  const { thickness, width, length } = rows[0];
  const piece = { thickness, width, length };
  const faults = new Map<number, Trouble>();
  const bakes = new Map<number, number>();
  for (const gravity of [...new Set(rows.map((row) => row.gravity))].sort((a, b) => a - b)) {
    const bake = attempt(() => bakeOf(piece, gravity, shop));
    if (isTrouble(bake)) faults.set(gravity, bake);
    else bakes.set(gravity, bake);
  }
  const { taken, why, out } = inChamber([...bakes.keys()], piece, shop);
  for (const gravity of [...bakes.keys()].slice(0, out)) {
    faults.set(gravity, why!);
    bakes.delete(gravity);
  }
  const unplanned = rows.flatMap(({ label, index, gravity }) =>
    faults.has(gravity) ? { label, index, trouble: faults.get(gravity)! } : [],
  );
  if (!taken) return { unplanned };
  const planned = rows.filter(({ gravity }) => bakes.has(gravity));
  const slowest = [...bakes.values()].reduce((a, b) => Math.max(a, b));
  const batch = onShelf(piece, shop) * shop.ovenShelves;
  return { size: { ...taken, rows: planned, piece, bake: slowest, batch }, unplanned };
}

/** Sizes in the order of their first rows, and the rows that cannot be planned. */
export function sizesOf(rows: readonly Row[], shop: Shop): { sizes: Size[]; unplanned: Unplanned[] } {
  const each = grouped(rows).map((group) => sizeOf(group, shop));
  return { sizes: each.flatMap(({ size }) => size ?? []), unplanned: each.flatMap(({ unplanned }) => unplanned) };
}
