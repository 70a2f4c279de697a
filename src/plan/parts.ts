import { noAnswer, said, type Trouble } from "../../shared/outcome";
import { type Piece, type Way, waysOf } from "../chamber/layers";
import { type Bath, heightForPieces, inBath } from "../chamber/load";
import { misfit } from "../chamber/misfit";
import { needOf } from "../chamber/need";
import type { Shape } from "../chamber/stratum";
import { type Bake, baking, type Oven } from "../cure/heating";
import { refuseThick } from "../cure/piece";
import { roomForResin } from "../resin/uptake";
import { attempt, isTrouble } from "./attempt";
import type { Row, Unplanned } from "./pieces";
import { onShelf, type Shelves } from "./shelves";
import type { Tub } from "./tub";

/** The pieces of one row with what planning needs to know of each, in SI units. */
export interface Part {
  readonly row: Row;
  /** Index of its size. */
  readonly size: number;
  /** m³, its ballast included. */
  readonly solids: number;
  readonly ballast: number;
  readonly uptake: number;
  /** m², all six faces. */
  readonly faces: number;
  readonly bake: number;
  readonly perShelf: number;
}

export interface Shop extends Bath, Oven, Bake, Shelves {
  readonly thickest: number;
  readonly loadingMinutes: number;
  readonly wrapMinutesPerPiece: number;
  /** Open seconds of a day. */
  readonly hours: number;
}

export interface Parts {
  readonly shapes: readonly Shape[];
  readonly parts: readonly Part[];
  readonly unplanned: readonly Unplanned[];
}

const one = 1 + 1e-9;

/** Sides closer than ten picometers are one size: 3/4 in and 19.05 mm load together. */
const near = (side: number): number => Math.round(side * 1e11);

const facesOf = ({ thickness, width, length }: Piece): number => 2 * (thickness * width + thickness * length + width * length);

function shapeOf({ thickness, width, length }: Piece): Shape {
  return { a: Math.min(thickness, width), b: Math.max(thickness, width), length, volume: thickness * width * length };
}

/** Seconds in the oven, for a piece that goes in, takes resin and is taken out, wrapped and baked within a day. */
function bakeOf(row: Row, perShelf: number, shop: Shop): number {
  refuseThick(row, shop.thickest);
  if (perShelf === 0) throw noAnswer`too large for an oven shelf of ${said("length", shop.ovenWidth)} by ${said("length", shop.ovenDepth)}`;
  roomForResin(1, row.gravity, 0);
  const bake = baking({ ...row, fullness: row.fullness ?? shop.fullness }, shop);
  if (bake > shop.hours * one)
    throw noAnswer`a bake of ${said("minutes", bake)} is longer than the open hours, ${said("hours", shop.hours)}`;
  const after = shop.loadingMinutes + shop.wrapMinutesPerPiece + bake;
  if (after > shop.hours * one)
    throw noAnswer`taking out, wrapping and baking take ${said("hours", after)}, longer than the open hours, ${said("hours", shop.hours)}: a piece would lie drained overnight`;
  return bake;
}

/** Ways in which a size goes into the tub at all, or why it does not. */
function waysInto(tub: Tub, piece: Piece, shop: Shop): Trouble | undefined {
  const { section, height } = tub;
  const room = heightForPieces(height, shop) * one;
  const { a, b, length } = shapeOf(piece);
  const lies = (p: number, q: number) =>
    section.shape === "round"
      ? Math.hypot(p, q) <= (section.diameter - 2 * shop.gap) * one
      : Math.max(p, q) <= (Math.max(section.length, section.width) - 2 * shop.gap) * one &&
        Math.min(p, q) <= (Math.min(section.length, section.width) - 2 * shop.gap) * one;
  if ((length <= room && lies(a, b)) || (a <= room && lies(b, length)) || (b <= room && lies(a, length))) return undefined;
  const needs = (["thickness", "width", "length"] as const).flatMap((stands) => {
    const [p, q] = (["thickness", "width", "length"] as const).filter((side) => side !== stands).map((side) => piece[side]);
    const way = { stands, height: piece[stands] } as Way;
    return lies(p, q) ? [{ way, depth: way.height + shop.cover }] : [];
  });
  return misfit({ chamber: section, height, piece, gap: shop.gap, foamRoom: shop.foamRoom, cover: shop.cover, needs });
}

/** One size, and what is known of each wood of it. */
interface Size {
  size: number;
  readonly trouble?: Trouble;
  readonly perShelf: number;
  readonly faces: number;
  readonly made: Map<number, Omit<Part, "row"> | Trouble>;
}

function inside<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const known = map.get(key);
  if (known) return known;
  const made = make();
  map.set(key, made);
  return made;
}

function sizeIn(sizes: Map<number, Map<number, Map<number, Size>>>, { thickness, width, length }: Piece, make: () => Size): Size {
  const [a, b] = thickness < width ? [thickness, width] : [width, thickness];
  return inside(
    inside(
      inside(sizes, near(a), () => new Map()),
      near(b),
      () => new Map<number, Size>(),
    ),
    near(length),
    make,
  );
}

/** Every row as parts of sizes, and the rows that cannot be planned. */
export function partsOf(rows: readonly Row[], tub: Tub, shop: Shop): Parts {
  const shapes: Shape[] = [];
  const parts: Part[] = [];
  const unplanned: Unplanned[] = [];
  const sizes = new Map<number, Map<number, Map<number, Size>>>();
  for (const row of rows) {
    const known = sizeIn(sizes, row, () => ({
      size: -1,
      trouble: waysInto(tub, row, shop),
      perShelf: onShelf(row, shop),
      faces: facesOf(row),
      made: new Map(),
    }));
    const { trouble, perShelf, faces, made } = known;
    const full = row.fullness ?? shop.fullness;
    // A fullness is at most 1.05, and a gravity under 2.
    const alike = Math.round(row.gravity * 1e9) * 4 + full;
    let one = made.get(alike);
    if (!one) {
      one = attempt((): Omit<Part, "row"> => {
        const bake = bakeOf(row, perShelf, shop);
        if (trouble) throw trouble;
        if (known.size < 0) known.size = shapes.push(shapeOf(row)) - 1;
        const { volume } = shapes[known.size];
        const uptake = roomForResin(volume, row.gravity, 0) * full;
        return { size: known.size, ...inBath(volume, row.gravity, shop), uptake, faces, bake, perShelf };
      });
      made.set(alike, one);
    }
    if (isTrouble(one)) unplanned.push({ label: row.label, index: row.index, trouble: one });
    else {
      const { size, solids, ballast, uptake, bake } = one;
      parts.push({ row, size, solids, ballast, uptake, faces, bake, perShelf });
    }
  }
  return { shapes, parts, unplanned };
}

/** The least resin that a load of these pieces alone needs: one layer, as full as it gets. */
export function leastNeed({ row, solids, uptake }: Part, tub: Tub, shop: Shop): number {
  const room = heightForPieces(tub.height, shop);
  return waysOf(tub.section, shop.gap, row)
    .filter(({ layer, height }) => layer.pieces > 0 && height <= room * one)
    .map(({ layer, height }) => {
      const many = Math.min(row.count, layer.pieces);
      return needOf({ area: tub.area, stack: height, solids: many * solids, uptake: many * uptake }, shop.leastCover);
    })
    .reduce((least, need) => Math.min(least, need), Number.POSITIVE_INFINITY);
}
