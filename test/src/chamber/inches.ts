import * as fc from "fast-check";
import type { Layer } from "../../../src/chamber/blocks";
import { placesOf } from "../../../src/chamber/blocks";
import type { Bath } from "../../../src/chamber/load";
import type { Section } from "../../../src/chamber/section";

export const inch = 0.0254;

/** The settings' defaults, in SI. */
export const bath: Bath = {
  cover: inch,
  leastCover: inch / 2,
  foamRoom: 1 / 3,
  gap: inch / 16,
  resinDensity: 1030,
  holdDown: 1.5,
  fullness: 0.6,
};

/** A length in metres, from as many inches to as many, in steps of 1/32 in or any. */
export const inches = (least: number, most: number): fc.Arbitrary<number> =>
  fc
    .oneof(
      fc.integer({ min: Math.ceil(least * 32), max: Math.floor(most * 32) }).map((n) => n / 32),
      fc.double({ min: least, max: most, noNaN: true }),
    )
    .map((n) => n * inch);

export const round = inches(2, 12).map((diameter): Section => ({ shape: "round", diameter }));
export const tray = fc.tuple(inches(2, 12), inches(2, 12)).map(([length, width]): Section => ({ shape: "rectangle", length, width }));
export const chambers = fc.oneof(round, tray);
export const pieces = fc.record({ thickness: inches(0.25, 3), width: inches(0.25, 4), length: inches(0.5, 9) });
export const gaps = fc.oneof(fc.constant(0), inches(0, 0.5));

/** What is wrong with a layer, looked at piece by piece: nothing, if its clearances are kept. */
export function wrongWith(layer: Layer, section: Section, gap: number): string | undefined {
  const places = placesOf(layer);
  const slack = 1e-8 * (section.shape === "round" ? section.diameter : section.length + section.width);
  if (places.length !== layer.pieces) return `${places.length} places for ${layer.pieces} pieces`;
  for (const [i, p] of places.entries()) {
    const [x, y] = [Math.max(-p.x, p.x + p.dx), Math.max(-p.y, p.y + p.dy)];
    const off =
      section.shape === "round" ? section.diameter / 2 - Math.hypot(x, y) : Math.min(section.length / 2 - x, section.width / 2 - y);
    if (off < gap - slack) return `piece ${i} is ${off} off the wall`;
    for (let j = 0; j < i; j++) {
      const q = places[j];
      const apart = Math.max(p.x - q.x - q.dx, q.x - p.x - p.dx, p.y - q.y - q.dy, q.y - p.y - p.dy);
      if (apart < gap - slack) return `pieces ${i} and ${j} are ${apart} apart`;
    }
  }
  return undefined;
}
