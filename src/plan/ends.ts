import { type Said, said } from "../../shared/outcome";
import type { Given } from "./given";
import { leastNeed } from "./parts";
import { type Plan, planIn, planOf } from "./planned";

/** Days and resin mixed, in one sentence, in the units of whoever asks. */
const mixedIn = ({ loads }: Plan): number => loads.reduce((sum, { mixed }) => sum + mixed, 0);

/** The lowest limit on the resin in tubs under which no further row is left out. */
function leastPlan(given: Given, free: Plan): { limit: number; made: Plan } | undefined {
  const shop = { ...given, hours: free.clock.hours };
  let limit = Math.max(...free.colors.flatMap(({ parts }) => parts.map((part) => leastNeed(part, free.tub, shop))));
  for (let tried = 0; tried < 12 && Number.isFinite(limit); tried++, limit *= 1.08) {
    const made = planIn({ ...given, mostResin: limit as Given["mostResin"] }, free.unplanned.length);
    if (made) return { limit, made };
  }
  return undefined;
}

/** Both ends of “most resin”: few days and much resin, or more days and little. */
export function endsOf(given: Given, made: Plan): Record<string, Said | string> {
  if (!made.loads.length) return {};
  const free = given.mostResin === undefined ? made : planOf({ ...given, mostResin: undefined });
  const least = leastPlan(given, free);
  return {
    "days with no limit on resin": said("count", free.days),
    "resin to mix with no limit": said("fluid", mixedIn(free)),
    ...(least && {
      "lowest “most resin” that works": said("fluid", least.limit),
      "days with that": said("count", least.made.days),
      "resin to mix with that": said("fluid", mixedIn(least.made)),
    }),
  };
}
