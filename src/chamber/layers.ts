import { type Layer, layerOf } from "./blocks";
import { inCircle } from "./circle";
import { floorOf } from "./floor";
import { packLayer, thorough } from "./mixed";
import { inRectangle } from "./rectangle";
import type { Section } from "./section";

/** Sides in meters; the grain runs along the length. */
export interface Piece {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
}

/** One way to put pieces into a chamber: how they stand, how high a layer of them is, and what goes into it. */
export interface Way {
  readonly way: "upright" | "lying";
  /** The side of the piece that stands, and with it the height of a layer. */
  readonly stands: keyof Piece;
  readonly height: number;
  readonly layer: Layer;
}

/** The fullest layer of pieces a by b, both sides horizontal; `gap` apart and `gap` off the wall: the better of two packings. */
function layerIn(section: Section, gap: number, a: number, b: number): Layer {
  const even = section.shape === "round" ? inCircle(section.diameter, gap, a, b) : inRectangle(section.length, section.width, gap, a, b);
  // Above this count one packing is within a hundredth of the best, and the search would take long.
  if (even.pieces === 0 || even.pieces > 2000) return even;
  const pool = { left: Int32Array.of(2 * even.pieces + 9), count: 2 * even.pieces + 9, worth: Number.POSITIVE_INFINITY };
  const item = { size: 0, p: Math.min(a, b), q: Math.max(a, b), worth: 1 };
  const { runs } = packLayer(floorOf(section, gap), gap, [item], pool, thorough);
  const mixed = layerOf(gap, runs);
  return mixed.pieces > even.pieces ? mixed : even;
}

/** All ways a piece can stand or lie, also those that do not fit. */
export function waysOf(section: Section, gap: number, { thickness, width, length }: Piece): readonly Way[] {
  const upright: Way = { way: "upright", stands: "length", height: length, layer: layerIn(section, gap, thickness, width) };
  const flat: Way = { way: "lying", stands: "thickness", height: thickness, layer: layerIn(section, gap, length, width) };
  if (thickness === width) return [upright, flat];
  return [upright, flat, { way: "lying", stands: "width", height: width, layer: layerIn(section, gap, length, thickness) }];
}
