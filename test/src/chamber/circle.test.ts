import * as fc from "fast-check";
import { inCircle } from "../../../src/chamber/circle";
import { ask } from "../../ask";
import records from "../../published/packing.json";
import { gaps, inch, inches, wrongWith } from "./inches";

const squares = records.filter((row) => row.radius !== undefined) as { n: number; radius: number; off: number; source: string }[];
const chambers = records.filter((row) => row.diameter !== undefined) as { n: number; diameter: number; side: number; source: string }[];

/** Rows alone, their offset stepped through: slow, and of another make. */
function steppedRows(radius: number, gap: number, a: number, b: number): number {
  let best = 0;
  for (let step = 0; step < 400; step++) {
    let pieces = 0;
    for (let y = ((step / 400) * 2 - 1) * (b + gap) - Math.ceil(radius / b) * (b + gap); y < radius; y += b + gap) {
      const far = Math.max(Math.abs(y), Math.abs(y + b));
      const free = (radius - gap) ** 2 - far ** 2;
      if (free > 0) pieces += Math.floor((2 * Math.sqrt(free) + gap) / (a + gap));
    }
    best = Math.max(best, pieces);
  }
  return best;
}

describe("a layer in a round chamber", () => {
  it.each(squares)("holds at the record radius $radius no more than $n squares and at least 80 % of them", ({ n, radius, off }) => {
    expect(inCircle(2 * radius, 0, 1, 1).pieces).toBeGreaterThanOrEqual(0.8 * n);
    expect(inCircle(2 * (radius + off), 0, 1, 1).pieces).toBeLessThanOrEqual(n);
  });

  it.each(squares)("so does PERLOAD, one upright layer of $n", ({ n, radius }) => {
    const bare = [
      ["gap", 0],
      ["cover", 0],
      ["foam room", 0],
      ["fullness", 0],
    ];
    const most = ask("PERLOAD", 2 * radius, 8, 1, 1, 8, 0.4, bare);
    expect(most).toBe(inCircle(2 * radius, 0, 1, 1).pieces);
    expect(most).toBeLessThanOrEqual(n);
  });

  it.each(chambers)("holds at least 80 % of the $n squares of $side in $diameter and no more", ({ n, diameter, side }) => {
    const { pieces } = inCircle(diameter, 0, side, side);
    expect(pieces).toBeLessThanOrEqual(n);
    expect(pieces).toBeGreaterThanOrEqual(0.8 * n);
  });

  it("fills the segments beside long pieces with turned ones", () => {
    const layer = inCircle(9 * inch, 0, 5 * inch, 0.75 * inch);
    expect(layer.blocks.some(({ dx }) => dx === 5 * inch)).toBe(true);
    expect(layer.blocks.some(({ dy }) => dy === 5 * inch)).toBe(true);
  });

  const sizes = [inches(2, 12), gaps, inches(0.5, 6), inches(0.4, 4)] as const;

  it("keeps every piece inside and the gap between them and to the wall", () =>
    fc.assert(
      fc.property(...sizes, (diameter, gap, a, b) => {
        expect(wrongWith(inCircle(diameter, gap, a, b), { shape: "round", diameter }, gap)).toBeUndefined();
      }),
      { numRuns: 300 },
    ));

  it("never holds less than rows at any offset", () =>
    fc.assert(
      fc.property(...sizes, (diameter, gap, a, b) => {
        const rows = Math.max(steppedRows(diameter / 2, gap, a, b), steppedRows(diameter / 2, gap, b, a));
        expect(inCircle(diameter, gap, a, b).pieces).toBeGreaterThanOrEqual(rows);
      }),
      { numRuns: 200 },
    ));

  it("never holds more for more gap, a smaller chamber or a larger piece", () =>
    fc.assert(
      fc.property(...sizes, fc.double({ min: 1, max: 1.3, noNaN: true }), (diameter, gap, a, b, more) => {
        const { pieces } = inCircle(diameter, gap, a, b);
        expect(inCircle(diameter, gap * more + (more - 1) * inch * 0.1, a, b).pieces).toBeLessThanOrEqual(pieces);
        expect(inCircle(diameter / more, gap, a, b).pieces).toBeLessThanOrEqual(pieces);
        expect(inCircle(diameter, gap, a * more, b).pieces).toBeLessThanOrEqual(pieces);
        expect(inCircle(diameter, gap, a, b * more).pieces).toBeLessThanOrEqual(pieces);
        expect(inCircle(diameter, gap, b, a).pieces).toBe(pieces);
      }),
      { numRuns: 600 },
    ));
});
