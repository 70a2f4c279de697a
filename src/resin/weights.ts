import { quantity } from "../../shared/argument";
import { badInput } from "../../shared/outcome";

/** Three weighings of one piece: dry and untreated; drained until it stops dripping; baked and cool. */
const weighed = (label: string, example: number) => quantity("weight", label, example, [1e-6, 1e6]);

export const beforeArg = weighed("weight before", 24);
export const drainedArg = weighed("weight drained", 49);
export const curedArg = weighed("weight cured", 46);

/** Relative: two readings of one scale that differ by less count as equal. */
const same = 1e-9;

/** How much heavier a piece became. A loss where there can be none is a mistake in weighing or writing, and is refused. */
export function gained(later: number, earlier: number, words: string): number {
  if (later < earlier * (1 - same)) throw badInput`${words}: weigh again`;
  return Math.max(0, later - earlier);
}
