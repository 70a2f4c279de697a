import { onShelf } from "../../../src/plan/shelves";

const inch = 0.0254;
const shelf = (width: number, depth: number, spacing: number) => ({
  ovenWidth: width * inch,
  ovenDepth: depth * inch,
  ovenShelves: 1,
  ovenSpacing: spacing * inch,
});
const piece = (thickness: number, width: number, length: number) => ({
  thickness: thickness * inch,
  width: width * inch,
  length: length * inch,
});

describe("an oven shelf", () => {
  it.each([
    {
      sides: [0.75, 0.75, 5],
      on: shelf(12, 10, 0.5),
      holds: 16,
      why: "⌊12.5/5.5⌋ ⌊10.5/1.25⌋ = 2 × 8 beats ⌊12.5/1.25⌋ ⌊10.5/5.5⌋ = 10 × 1",
    },
    { sides: [2, 2, 2], on: shelf(10, 10, 0), holds: 25, why: "ten inches hold five of two" },
    { sides: [5, 1, 3], on: shelf(12, 10, 0.5), holds: 6, why: "on the widest face, 3 x 5: 2 × 3 and 3 × 1" },
    { sides: [1, 10, 12], on: shelf(12, 10, 0.5), holds: 1, why: "one that just fits" },
    { sides: [1, 10.01, 12], on: shelf(12, 10, 0.5), holds: 0, why: "and one that does not" },
  ])("holds $holds: $why", ({ sides: [t, w, l], on, holds }) => expect(onShelf(piece(t, w, l), on)).toBe(holds));
});
