import { type Contract, parameters } from "../../shared/contract";
import type { Cell } from "../../shared/outcome";
import { call, catalogue, cellName } from "../../src/catalogue";
import { cells, type Typed } from "../ask";
import { type Cells, hostile, isHanded, troubleWith } from "../hostile";

const calls = 10_000;
/** A per-piece function answers a whole column in one go, row by row. */
const rows = 500;

/** The same numbers every time: a failure can be run again. */
function dice(seed: number): (sides: number) => number {
  let state = seed;
  return (sides) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * sides);
  };
}

const odd: readonly Cell[] = [
  ...Object.values(hostile),
  ...["3/4 in", "95 C", "12 %", "1 qt", "2026-03-14", "maple", "US", "SI", "1e308 in", "\u202e3 in", "=A1", "x".repeat(5_000)],
  ...[0.5, 1, 2, 24, 104, 200, 45_901, 1e15, -7.25],
];

const worked = (contract: Contract): (Cells | undefined)[] => contract.worked.typed.map((typed) => cells(typed as Typed));

/** One argument: mostly what the worked example has, so that calls get past the first of them. */
function argument(own: Cells | undefined, height: number, roll: (sides: number) => number): Cells | undefined {
  const kind = roll(8);
  if (kind === 0) return undefined;
  const pick = (): Cell => (roll(3) ? (own?.[0]?.[0] ?? 1) : odd[roll(odd.length)]);
  if (kind === 1) return [[odd[roll(odd.length)]]];
  if (height > 1) return Array.from({ length: height }, () => [pick()]);
  return kind < 5 && own ? own.map((line) => line.map((cell) => (roll(4) ? cell : odd[roll(odd.length)]))) : [[pick()]];
}

describe.each(catalogue.filter((contract) => parameters(contract).length).map((contract) => ({ name: cellName(contract), contract })))(
  "$name",
  ({ contract }) => {
    it(`answers ${calls} hostile calls with a value, or an error that says what is wrong`, () => {
      const roll = dice(20_261_127);
      const height = contract.per === "piece" ? rows : 1;
      const own = worked(contract);
      const count = parameters(contract).length;
      const wrong = new Set<string>();
      for (let made = 0; made < calls; made += height) {
        const all = Array.from({ length: 1 + roll(count) }, (_, i) => argument(own[i], height, roll));
        const handed = isHanded(all);
        const answers = call(contract, all);
        const width = answers[0]?.length ?? 0;
        if (!width || answers.some((row) => row.length !== width)) wrong.add("a block that is no rectangle");
        for (const answer of answers.flat()) {
          const trouble = troubleWith(answer, handed);
          if (trouble) wrong.add(trouble);
        }
      }
      expect([...wrong].slice(0, 5)).toEqual([]);
    });
  },
);
