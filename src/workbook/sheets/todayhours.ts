import { formula } from "../formula";
import type { Page } from "../page";
import type { Ref } from "../place";
import { type Each, problem } from "./three";
import type { Begins, Lengths, Times } from "./todaytimes";

/** What no time can keep: vacuum and oven are attended. */
export function hoursKept(page: Page, { at, isDemo }: Begins, { opens, closes, intake, sitting }: Lengths, { load, drain }: Times): void {
  const hour = (ref: Ref) => formula`MOD(${ref},1)*24`;
  const outside = (ref: Ref, hours: Ref) =>
    formula`IF(COUNT(${ref},${hours})=2,OR(${hour(ref)}<${opens}-0.000001,${hour(ref)}+${hours}>${closes}+0.000001),FALSE)`;
  const any = (refs: Each<Ref>, hours: (one: number) => Ref) =>
    formula`OR(${outside(refs[0], hours(0))},${outside(refs[1], hours(1))},${outside(refs[2], hours(2))})`;
  problem(
    page,
    formula`IF(ISNUMBER(${at})=FALSE,"",IF(${any(load, () => intake)},"Loading and vacuum fall outside the hours on My Shop, and vacuum must not be left alone: change the start or the hours.",IF(${any(drain, (one) => sitting[one])},"Draining and baking do not fit into one day's hours, and the oven must not be left alone.",IF(AND(${isDemo},COUNT(${load[0]})=1,${load[0]}>${at}),"Load 1 will not be ready in time for the demo.",""))))`,
  );
}
