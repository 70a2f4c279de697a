import * as fc from "fast-check";
import { Trouble } from "../../../shared/outcome";
import { type Bath, load } from "../../../src/chamber/load";
import { areaOf } from "../../../src/chamber/section";
import { near } from "../../within";
import { bath, chambers, inch, inches, pieces } from "./inches";

const gravity = fc.double({ min: 0.05, max: 1.54, noNaN: true });
const baths: fc.Arbitrary<Bath> = fc.record({
  cover: inches(0, 2),
  leastCover: inches(0, 1),
  foamRoom: fc.double({ min: 0, max: 0.6, noNaN: true }),
  gap: inches(0, 0.3),
  resinDensity: fc.constantFrom(900, 1030, 1200),
  holdDown: fc.double({ min: 1, max: 3, noNaN: true }),
  fullness: fc.double({ min: 0, max: 1.05, noNaN: true }),
});
const cases = [chambers, inches(3, 24), pieces, gravity, baths] as const;

/** The largest count, 0 where none fits. */
const most = (...given: Parameters<typeof load>): number => {
  try {
    return load(...given).most();
  } catch (trouble) {
    if (trouble instanceof Trouble && trouble.code === "#N/A") return 0;
    throw trouble;
  }
};

describe("a load", () => {
  it("is the largest count that is accepted: every smaller one is, one more is not", () =>
    fc.assert(
      fc.property(...cases, fc.double({ min: 0, max: 1, noNaN: true }), (chamber, height, piece, g, settings, share) => {
        const { arrange } = load(chamber, height, piece, g, settings);
        const largest = most(chamber, height, piece, g, settings);
        if (largest > 0) {
          expect(arrange(largest).layers).toBeGreaterThan(0);
          expect(arrange(Math.max(1, Math.ceil(largest * share))).layers).toBeGreaterThan(0);
        }
        expect(() => arrange(largest + 1)).toThrow(Trouble);
      }),
      { numRuns: 300 },
    ));

  it("leaves the foam its room, covers the pieces under vacuum and leaves the least cover in the end", () =>
    fc.assert(
      fc.property(...cases, fc.double({ min: 0, max: 1, noNaN: true }), (chamber, height, piece, g, settings, share) => {
        const largest = most(chamber, height, piece, g, settings);
        fc.pre(largest > 0);
        const made = load(chamber, height, piece, g, settings).arrange(Math.max(1, Math.ceil(largest * share)));
        const area = areaOf(chamber);
        expect(made.stack + settings.cover).toBeLessThanOrEqual(height * (1 - settings.foamRoom) * (1 + 1e-8));
        near((made.pour + made.solids) / area, Math.max(made.stack + settings.cover, made.solids / area));
        near(made.depth, (made.pour + made.solids) / area);
        const end = (made.pour + made.add + made.solids - made.uptake) / area;
        expect(end).toBeGreaterThanOrEqual(Math.max(made.stack + settings.leastCover, made.solids / area) * (1 - 1e-9));
        if (made.add > 0) near(end, Math.max(made.stack + settings.leastCover, made.solids / area));
        expect(made.layers * made.perLayer).toBeGreaterThanOrEqual(Math.ceil(largest * share));
      }),
      { numRuns: 200 },
    ));

  it("is never larger for more gap, more cover, more foam, or a lower chamber", () =>
    fc.assert(
      fc.property(...cases, fc.double({ min: 1, max: 1.5, noNaN: true }), (chamber, height, piece, g, settings, more) => {
        const largest = most(chamber, height, piece, g, settings);
        const fewer = (change: Partial<Bath>) =>
          expect(most(chamber, height, piece, g, { ...settings, ...change })).toBeLessThanOrEqual(largest);
        fewer({ gap: settings.gap * more + (more - 1) * inch });
        fewer({ cover: settings.cover * more });
        fewer({ foamRoom: settings.foamRoom * more });
        expect(most(chamber, height / more, piece, g, settings)).toBeLessThanOrEqual(largest);
      }),
      { numRuns: 300 },
    ));

  it("needs least resin: no other way to put the same pieces in pours less", () =>
    fc.assert(
      fc.property(chambers, inches(4, 24), pieces, fc.integer({ min: 1, max: 40 }), (chamber, height, piece, count) => {
        const fits = most(chamber, height, piece, 0.4, bath) >= count;
        fc.pre(fits);
        const { stack, way } = load(chamber, height, piece, 0.4, bath).arrange(count);
        const { thickness, width, length } = piece;
        // Turned on its side, what lay stands and what stood lies: the stack must be the same.
        for (const other of [
          { thickness: length, width: thickness, length: width },
          { thickness: width, width: length, length: thickness },
        ])
          near(load(chamber, height, other, 0.4, bath).arrange(count).stack, stack);
        expect(["upright", "lying"]).toContain(way);
      }),
      { numRuns: 200 },
    ));

  it("counts ballast that fills more than the cover: the resin then stands as high as the ballast makes it", () => {
    const tight: Bath = { ...bath, gap: 0, cover: 0, holdDown: 10, foamRoom: 0, fullness: 0 };
    const cube = { thickness: inch, width: inch, length: inch };
    const made = load({ shape: "rectangle", length: 4 * inch, width: 4 * inch }, 10 * inch, cube, 0.4, tight).arrange(16);
    expect(made.stack).toBe(inch);
    expect(made.pour).toBe(0);
    // 1 in³ of wood wants 10 (1.03 − 0.40)/(1 − 1.03/7.85)/7.85 in³ of steel.
    near(made.depth, inch * (1 + (10 * (1.03 - 0.4)) / (1 - 1.03 / 7.85) / 7.85));
  });

  it("answers at once, whatever the sizes", () => {
    const started = process.cpuUsage().user;
    for (let i = 0; i < 50; i++) {
      const piece = { thickness: (0.5 + i / 200) * inch, width: (1 + i / 150) * inch, length: (3 + i / 100) * inch };
      const made = load({ shape: "round", diameter: 10 * inch }, 14 * inch, piece, 0.45, bath);
      made.arrange(made.most());
    }
    for (const size of [0.01, 0.03, 0.1, 0.4]) {
      const piece = { thickness: size * inch, width: size * 1.7 * inch, length: 20 * inch };
      try {
        load({ shape: "round", diameter: 200 * inch }, 200 * inch, piece, 0.45, { ...bath, gap: 0 }).most();
      } catch (trouble) {
        expect(trouble).toBeInstanceOf(Trouble);
      }
    }
    expect((process.cpuUsage().user - started) / 1000).toBeLessThan(1000);
  });
});
