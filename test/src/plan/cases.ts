import fc from "fast-check";
import type { Outcome } from "../../../shared/outcome";
import { spill } from "../../ask";

/** A row of a plan by its headers. */
export type Line = Record<string, Outcome>;

export const linesOf = ([header, ...rows]: Outcome[][]): Line[] =>
  rows.map((row) => Object.fromEntries(row.map((cell, i) => [header[i] as string, cell])));

/** A day, hour and minute after a serial. */
export const inDays = (midnight: number, [day, hour, minute]: number[]): number => midnight + day + (hour * 60 + minute) / 1440;

const side = (least: number, most: number) => fc.integer({ min: least * 8, max: most * 8 }).map((eighths) => eighths / 8);

/** Pieces of few sizes, so that some load together; now and then one too large for anything. */
const sizes = fc.array(fc.tuple(side(0.25, 2.25), side(0.5, 3), side(1, 8)), { minLength: 1, maxLength: 4 });
const rows = fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.1, max: 1.2, noNaN: true })), {
  minLength: 1,
  maxLength: 8,
});

const shop = fc.record({
  "resin on hand": fc.double({ min: 0, max: 4, noNaN: true }),
  drips: fc.double({ min: 0, max: 0.5, noNaN: true }),
  "packet makes": fc.double({ min: 0.05, max: 2, noNaN: true }),
  "loading minutes": fc.integer({ min: 0, max: 45 }),
  "vacuum hours": fc.double({ min: 0, max: 3, noNaN: true }),
  "soak hours": fc.double({ min: 0, max: 30, noNaN: true }),
  "wrap minutes per piece": fc.double({ min: 0, max: 10, noNaN: true }),
  opens: fc.integer({ min: 1, max: 12 }),
  "oven shelves": fc.integer({ min: 1, max: 3 }),
  "in the oven": fc.constantFrom("foil", "spaced", "fan"),
  fullness: fc.double({ min: 0, max: 1, noNaN: true }),
});

/** A list of pieces in some shop, and the two functions that plan it. */
export const anyCase = fc
  .record({
    sizes,
    rows,
    shop,
    open: fc.integer({ min: 4, max: 12 }),
    diameter: fc.double({ min: 3, max: 12, noNaN: true }),
    height: fc.double({ min: 5, max: 20, noNaN: true }),
    start: fc.double({ min: 46000, max: 46400, noNaN: true }),
  })
  .map((drawn) => {
    const pieces = drawn.rows.map(([size, count, gravity], i) => [`p${i}`, count, ...drawn.sizes[size % drawn.sizes.length], gravity]);
    const settings: Record<string, number | string> = { ...drawn.shop, closes: drawn.shop.opens + drawn.open };
    /** Quarts lost as a film on the pieces, unless the load had less to lose. */
    const dripsOf = (loads: readonly Line[]): number =>
      loads.reduce((all, line) => {
        const name = String(line.pieces).split(", ")[0];
        const [, , t, w, l] = pieces.find(([label]) => label === name) as number[];
        return all + ((((2 * (t * w + t * l + w * l)) / 57.75) * drawn.shop.drips) / 25.4) * (line.count as number);
      }, 0);
    return {
      pieces,
      settings,
      dripsOf,
      spill: (name: "PLAN" | "SHOPPINGLIST", start: number | "" = drawn.start, more: Record<string, number> = {}) =>
        spill(name, pieces, drawn.diameter, drawn.height, start, Object.entries({ ...settings, ...more })),
    };
  });
