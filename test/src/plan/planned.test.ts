import fc from "fast-check";
import { Trouble } from "../../../shared/outcome";
import { type Plan, planOf } from "../../../src/plan/planned";
import { anyCase } from "./cases";
import { plainLoads } from "./plain";
import { miscounted, misplaced, mistimed } from "./rules";

/** More of them now and then: RUNS=1000. */
const numRuns = Number(process.env.RUNS ?? 8);

const planned = (given: Parameters<typeof planOf>[0]): Plan | undefined => {
  try {
    return planOf(given);
  } catch (trouble) {
    if (trouble instanceof Trouble) return undefined;
    throw trouble;
  }
};

describe("a plan of any list", () => {
  it("has all pieces, each inside its tub and none in another; nobody in two places; resin that adds up", () =>
    fc.assert(
      fc.property(anyCase, (one) => {
        const given = one.given();
        const made = planned(given);
        if (!made) return;
        const lost = new Set(made.unplanned.map(({ index }) => index));
        const due = given.pieces.rows.filter(({ index }) => !lost.has(index)).reduce((sum, { count }) => sum + count, 0);
        expect(made.loads.reduce((sum, { count }) => sum + count, 0)).toBe(due);
        expect(misplaced(made, given)).toBeUndefined();
        expect(mistimed(made, given)).toBeUndefined();
        expect(miscounted(made, given)).toBeUndefined();
      }),
      { numRuns },
    ));

  it("takes no more loads than plain rows of upright pieces, first fit", () =>
    fc.assert(
      fc.property(anyCase, (one) => {
        const given = one.given(undefined, { "most resin": "", "wrap minutes per piece": 0 });
        const made = planned(given);
        if (made) expect(made.loads.length).toBeLessThanOrEqual(plainLoads(made, given));
      }),
      { numRuns },
    ));

  it("is never done later than rows in turn", () =>
    fc.assert(
      fc.property(anyCase, (one) => {
        const best = planned(one.given(undefined, { order: "best" }));
        const typed = planned(one.given(undefined, { order: "as typed" }));
        if (best?.done === undefined || typed?.done === undefined || best.unplanned.length !== typed.unplanned.length) return;
        expect(best.done).toBeLessThanOrEqual(typed.done + 1);
      }),
      { numRuns },
    ));
});
