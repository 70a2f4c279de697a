import * as fc from "fast-check";
import { inRectangle } from "../../../src/chamber/rectangle";
import { gaps, inch, inches, wrongWith } from "./inches";

/** The most that straight cuts from side to side can yield, by trying every one: whole numbers only. */
function guillotine(length: number, width: number, a: number, b: number): number {
  const known = new Map<number, number>();
  const yieldOf = (l: number, w: number): number => {
    if (Math.max(l, w) < Math.max(a, b) || Math.min(l, w) < Math.min(a, b)) return 0;
    const key = Math.max(l, w) * 1000 + Math.min(l, w);
    const found = known.get(key);
    if (found !== undefined) return found;
    let best = 1;
    for (let x = 1; x <= l / 2; x++) best = Math.max(best, yieldOf(x, w) + yieldOf(l - x, w));
    for (let y = 1; y <= w / 2; y++) best = Math.max(best, yieldOf(l, y) + yieldOf(l, w - y));
    known.set(key, best);
    return best;
  };
  return yieldOf(length, width);
}

const grid = (length: number, width: number, a: number, b: number) =>
  Math.max(Math.floor(length / a) * Math.floor(width / b), Math.floor(length / b) * Math.floor(width / a));

describe("a layer in a tray", () => {
  it.each([
    { tray: [8, 5], piece: [5, 1], pieces: 8, from: "5 across and 3 turned beside them: all of the floor" },
    { tray: [7, 5], piece: [2, 3], pieces: 5, from: "a row of two and a row of three: by hand" },
    { tray: [10, 10], piece: [3, 4], pieces: 7, from: "by hand" },
    { tray: [6, 6], piece: [1.5, 1.5], pieces: 16, from: "a grid" },
    { tray: [6, 6], piece: [7, 1], pieces: 0, from: "too long" },
  ])("of $tray holds $pieces of $piece ($from)", ({ tray: [length, width], piece: [a, b], pieces }) => {
    expect(inRectangle(length, width, 0, a, b).pieces).toBe(pieces);
    expect(inRectangle(width, length, 0, b, a).pieces).toBe(pieces);
  });

  const whole = (most: number) => fc.integer({ min: 1, max: most });

  it("holds no less than a grid either way, and no more than straight cuts can yield", () => {
    let [held, bound] = [0, 0];
    fc.assert(
      fc.property(whole(40), whole(40), whole(12), whole(12), (length, width, a, b) => {
        const { pieces } = inRectangle(length, width, 0, a, b);
        const most = guillotine(length, width, a, b);
        held += pieces;
        bound += most;
        expect(pieces).toBeGreaterThanOrEqual(grid(length, width, a, b));
        expect(pieces).toBeLessThanOrEqual(most);
      }),
      { numRuns: 300, seed: 3 },
    );
    expect(held).toBeGreaterThan(0.98 * bound);
  });

  const sizes = [inches(2, 12), inches(2, 12), gaps, inches(0.5, 6), inches(0.4, 4)] as const;

  it("keeps every piece inside and the gap between them and to the wall", () =>
    fc.assert(
      fc.property(...sizes, (length, width, gap, a, b) => {
        expect(wrongWith(inRectangle(length, width, gap, a, b), { shape: "rectangle", length, width }, gap)).toBeUndefined();
      }),
      { numRuns: 300 },
    ));

  it("never holds more for more gap, a smaller tray or a larger piece", () =>
    fc.assert(
      fc.property(...sizes, fc.double({ min: 1, max: 1.3, noNaN: true }), (length, width, gap, a, b, more) => {
        const { pieces } = inRectangle(length, width, gap, a, b);
        expect(inRectangle(length, width, gap * more + (more - 1) * inch * 0.1, a, b).pieces).toBeLessThanOrEqual(pieces);
        expect(inRectangle(length / more, width, gap, a, b).pieces).toBeLessThanOrEqual(pieces);
        expect(inRectangle(length, width, gap, a * more, b).pieces).toBeLessThanOrEqual(pieces);
        expect(inRectangle(width, length, gap, b, a).pieces).toBe(pieces);
      }),
      { numRuns: 2000 },
    ));
});
