import fc from "fast-check";
import { outlineOf, readGiven } from "../../../shared/given";
import type { Outcome } from "../../../shared/outcome";
import { shopReader } from "../../../shared/settings";
import type { Given } from "../../../src/plan/given";
import { plan } from "../../../src/plan/plan";
import { settings } from "../../../src/shop";
import { cells, spill, type Typed } from "../../ask";

/** A row of a plan by its headers. */
export type Line = Record<string, Outcome>;

export const linesOf = ([header, ...rows]: Outcome[][]): Line[] =>
  rows.map((row) => Object.fromEntries(row.map((cell, i) => [header[i] as string, cell])));

/** A day, hour and minute after a serial. */
export const inDays = (midnight: number, [day, hour, minute]: number[]): number => midnight + day + (hour * 60 + minute) / 1440;

const readShop = shopReader(settings);

/** What PLAN is given when it is called so: pieces, chamber, height, start, resins, shop. */
export function givenOf(...typed: Typed[]): Given {
  const all = typed.map(cells);
  return readGiven(outlineOf(plan), all.slice(0, 5), readShop(all[5])).given as unknown as Given;
}

const side = (least: number, most: number) => fc.integer({ min: least * 8, max: most * 8 }).map((eighths) => eighths / 8);

/** Pieces of few sizes, so that some load together; now and then one too large for anything. */
const sizes = fc.array(fc.tuple(side(0.25, 2.25), side(0.5, 3), side(1, 8)), { minLength: 1, maxLength: 5 });
const rows = fc.array(
  fc.tuple(
    fc.nat(),
    fc.integer({ min: 1, max: 60 }),
    fc.double({ min: 0.1, max: 1.2, noNaN: true }),
    fc.constantFrom("", "", "", "blue", "red", "clear"),
    fc.oneof(fc.constant(""), fc.double({ min: 0.1, max: 1, noNaN: true })),
  ),
  { minLength: 1, maxLength: 8 },
);

const maybe = <T>(value: fc.Arbitrary<T>) => fc.oneof(fc.constant(""), value);

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
  gap: fc.constantFrom(0, 0.0625, 0.2),
  tub: maybe(fc.constantFrom("4", "5 in", "4 x 3 in")),
  tubs: maybe(fc.integer({ min: 1, max: 5 })),
  "most resin": maybe(fc.double({ min: 0.3, max: 4, noNaN: true })),
  "days off": maybe(fc.constantFrom("Sun", "sat, SUN", "Wed")),
  order: fc.constantFrom("best", "best", "as typed"),
});

/** A list of pieces in some shop, and the two functions that plan it. */
export const anyCase = fc
  .record({
    sizes,
    rows,
    shop,
    open: fc.integer({ min: 4, max: 12 }),
    diameter: fc.double({ min: 5, max: 14, noNaN: true }),
    height: fc.double({ min: 5, max: 20, noNaN: true }),
    start: fc.double({ min: 46000, max: 46400, noNaN: true }),
  })
  .map((drawn) => {
    const pieces = drawn.rows.map(([size, count, gravity, color, full], i) => [
      `p${i}`,
      count,
      ...drawn.sizes[size % drawn.sizes.length],
      gravity,
      color,
      full,
    ]);
    const settings: Record<string, number | string> = { ...drawn.shop, closes: drawn.shop.opens + drawn.open };
    const typed = (start: number | "", more: Record<string, number | string>): Typed[] => [
      pieces,
      drawn.diameter,
      drawn.height,
      start,
      undefined,
      Object.entries({ ...settings, ...more }),
    ];
    return {
      pieces,
      settings,
      diameter: drawn.diameter,
      given: (start: number | "" = drawn.start, more: Record<string, number | string> = {}) => givenOf(...typed(start, more)),
      spill: (name: "PLAN" | "SHOPPINGLIST", start: number | "" = drawn.start, more: Record<string, number | string> = {}) =>
        spill(name, ...typed(start, more)),
    };
  });

export type Case = ReturnType<typeof anyCase.generate>["value"];

export const start = "2026-03-14 09:00";
export const midnight = 46095;

/** A tray and a wood that can be reckoned by hand: gravity 0.77 is half void, floats level in this fluid and needs no ballast. */
export const byHand = [
  ["gap", 0],
  ["resin density", 0.77],
  ["least cover", 0.5],
  ["packet makes", "10 in³"],
  ["drips", "0.01 in"],
  ["oven shelves", 1],
  ["oven width", 4],
];
