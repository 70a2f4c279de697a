import fc from "fast-check";
import { Trouble } from "../../../shared/outcome";
import { planOf } from "../../../src/plan/planned";
import { anyCase } from "./cases";
import { miscounted, misplaced, mistimed } from "./rules";

describe("a plan of any list", () => {
  it("puts every piece inside its tub and none into another, whatever the list", () =>
    fc.assert(
      fc.property(anyCase, (one) => {
        const given = one.given();
        let made: ReturnType<typeof planOf>;
        try {
          made = planOf(given);
        } catch (trouble) {
          if (trouble instanceof Trouble) return;
          throw trouble;
        }
        const rows = new Set(made.unplanned.map(({ index }) => index));
        const due = given.pieces.rows.filter(({ index }) => !rows.has(index)).reduce((sum, { count }) => sum + count, 0);
        expect(made.loads.reduce((sum, { count }) => sum + count, 0)).toBe(due);
        expect(misplaced(made, given)).toBeUndefined();
        expect(mistimed(made, given)).toBeUndefined();
        expect(miscounted(made, given)).toBeUndefined();
      }),
      { numRuns: Number(process.env.RUNS ?? 200) },
    ));
});
