import { quantity } from "../../shared/argument";
import { badInput } from "../../shared/outcome";

/** What the scale says of one piece: dry and untreated, drained of what drips off, baked and cool. Never a weighing beside another. */
const weighed = (label: string, example: number) => quantity("weight", label, example, [1e-6, 1e6]);

export const beforeArg = weighed("weight before", 24);
export const drainedArg = weighed("weight drained", 49);
export const curedArg = weighed("weight cured", 46);

/** Two readings of one scale that differ by less are the same. */
const same = 1e-9;

/** How much heavier a piece became; a loss where none can be is a slip of the scale or the pen. */
export function gained(later: number, earlier: number, words: string): number {
  if (later < earlier * (1 - same)) throw badInput`${words}: weigh again`;
  return Math.max(0, later - earlier);
}
