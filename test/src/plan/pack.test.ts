import fc from "fast-check";
import { loadsOf } from "../../../src/plan/loads";
import { packer } from "../../../src/plan/pack";
import { partsOf } from "../../../src/plan/parts";
import { tubOf } from "../../../src/plan/tub";
import { givenOf } from "./cases";
import { misplaced } from "./rules";

const side = (least: number, most: number) => fc.integer({ min: least * 16, max: most * 16 }).map((sixteenths) => sixteenths / 16);
const size = fc.tuple(side(0.25, 2), side(0.25, 3), fc.oneof(side(0.5, 6), fc.double({ min: 0.5, max: 6, noNaN: true })));
const lists = fc.record({
  rows: fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), size), { minLength: 1, maxLength: 3 }),
  round: fc.boolean(),
  width: fc.double({ min: 2.5, max: 9, noNaN: true }),
  depth: fc.double({ min: 2.5, max: 9, noNaN: true }),
  height: fc.double({ min: 4, max: 12, noNaN: true }),
  gap: fc.constantFrom(0, 0.0625, 0.15),
  kind: fc.constantFrom("fewest", "build", "build", "one more", "in turn"),
});

describe("packing", () => {
  it("puts every piece of a thousand lists inside its tub and none into another, round and rectangular", () => {
    const seen = { loads: 0, round: 0, lying: 0, mixed: 0 };
    fc.assert(
      fc.property(lists, ({ rows, round, width, depth, height, gap, kind }) => {
        const pieces = rows.map(([count, sides], i) => [`p${i}`, count, ...sides, 0.3 + i / 10]);
        const given = givenOf(pieces, round ? width : `${width} x ${depth}`, height, "", undefined, [["gap", gap]]);
        const tub = tubOf(given);
        const { shapes, parts } = partsOf(given.pieces.rows, tub, { ...given, hours: 12 * 3600 });
        if (!parts.length) return;
        const own = packer({ shapes, parts, tub, bath: given, mostPieces: 1e6, mostResin: Number.POSITIVE_INFINITY, work: 0 });
        const first = kind === "in turn" ? own.inTurn() : kind === "fewest" ? own.fewest() : own.build();
        const made = kind === "one more" ? own.build({ loads: first.stacks.length + 1 }) : first;
        const loads = loadsOf(made.stacks, parts, shapes, 0, tub, given);
        const stuck = made.stuck?.reduce((sum, many) => sum + many, 0) ?? 0;
        expect(loads.reduce((sum, { count }) => sum + count, stuck)).toBe(own.pieces);
        expect(misplaced({ loads, tub }, given)).toBeUndefined();
        seen.loads += loads.length;
        seen.round += round ? loads.length : 0;
        seen.lying += loads.filter(({ stack }) => stack.strata.some(({ way }) => way === "lying")).length;
        seen.mixed += loads.filter(({ shares }) => shares.length > 1).length;
      }),
      { numRuns: 1000 },
    );
    // A test that packs nothing would hold too.
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(500);
  });
});
