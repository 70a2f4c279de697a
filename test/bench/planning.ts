import type { Cell } from "../../shared/outcome";
import { call, catalogue } from "../../src/catalogue";

const plan = catalogue.find(({ name }) => name === "PLAN")!;
const sizes = 200;

/** One row a piece, in two hundred sizes. */
export const tokensOf = (many: number): Cell[][] =>
  Array.from({ length: many }, (_, i) => {
    const size = i % sizes;
    return [`piece ${i}`, 1, 0.5 + (size % 20) * 0.05, 0.5 + (size % 10) * 0.1, 3 + Math.floor(size / 20) * 0.25, 0.35 + (i % 7) * 0.03];
  });

function milliseconds(many: number): number {
  const pieces = tokensOf(many);
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 4; round++) {
    // The last plan is kept for who asks the same again: each round asks another.
    const start = `2026-03-14 08:0${round}`;
    const from = performance.now();
    const rows = call(plan, [pieces, [[10]], [[14]], [[start]]]);
    best = Math.min(best, performance.now() - from);
    if (rows.length < 3) throw new Error(`PLAN planned nothing: ${JSON.stringify(rows[0])}`);
  }
  return best;
}

export interface Planned {
  readonly pieces: number;
  readonly ms: number;
}

/** PLAN at growing numbers of pieces. */
export const planned = (): Planned[] => [1_000, 10_000, 100_000].map((pieces) => ({ pieces, ms: milliseconds(pieces) }));

const cans = { sizes: [[0.95], [1.9], [3.8], [5.05], [18.9], [2.15]], prices: [[9.5], [19], [38], [50.5], [189], [21.5]] };

/** WHATTOBUY for sizes without a large common measure. */
export function bought(): number {
  const contract = catalogue.find(({ name }) => name === "WHATTOBUY")!;
  const times = Array.from({ length: 5 }, () => {
    const from = performance.now();
    call(contract, [[[500]], cans.sizes, cans.prices]);
    return performance.now() - from;
  });
  return Math.min(...times);
}

/** How much longer the larger plan takes, over what n log n allows: 1 is n log n. */
export const growth = (small: Planned, large: Planned): number =>
  large.ms / small.ms / ((large.pieces * Math.log(large.pieces)) / (small.pieces * Math.log(small.pieces)));
