import type { Outcome } from "../../shared/outcome";
import type { Answers } from "./answers";
import type { Found, Given } from "./found";
import { momentOf, serialOf } from "./hours";
import type { Run } from "./schema";
import { timeline } from "./timeline";

/** What is mixed for a run, and how much of what is on hand goes in first. */
export interface Mixing {
  readonly onHand: number;
  readonly mix?: number;
  readonly packets?: number;
  readonly dye?: number;
  readonly spoons?: string;
  /** The resin on hand cannot be used, and so none of it is counted. */
  readonly isFresh: boolean;
}

/** Prefix of a fact: its value if none of the resin on hand can be used. */
export const fresh = "fresh ";

/** The most resin in use at once, for what one filling of the chamber leaves serves the next. */
function needAtOnce({ loads, together }: Given, facts: Found["facts"], before: string): number {
  const number = (name: string) => Number(facts[before + name] ?? 0);
  let taken = 0;
  let most = 0;
  for (let first = 1; first <= loads.length; first += together) {
    const its = loads.slice(first - 1, first - 1 + together).map((_, i) => first + i);
    most = Math.max(most, taken + its.reduce((sum, load) => sum + number(`pour ${load}`) + number(`add ${load}`), 0));
    taken += its.reduce((sum, load) => sum + Number(facts[`uptake ${load}`] ?? 0), 0);
  }
  return most;
}

/** What to mix, with the resin on hand and without it: only the clock of the run tells whether it can be used. */
export function stockFacts(
  given: Given,
  facts: Found["facts"],
  put: (name: string, outcome: Outcome | undefined) => number | undefined,
  ask: Answers["ask"],
): void {
  const own = Number(facts["resin on hand"] ?? 0);
  const itsRate = typeof facts["resin dye rate"] === "number" ? facts["resin dye rate"] : undefined;
  for (const [before, onHand] of own > 0
    ? ([
        ["", own],
        [fresh, 0],
      ] as const)
    : ([["", 0]] as const)) {
    const [mixed, packets] = ask("MIX", { need: needAtOnce(given, facts, before), onHand }, given.shop)[0];
    const added = put(`${before}mix`, mixed);
    put(`${before}packets`, packets);
    if (added === undefined) continue;
    const dye = put(`${before}dye`, ask("DYETOPUP", { onHand, itsRate: onHand ? itsRate : 0, added }, given.shop)[0][0]);
    if (dye !== undefined) put(`${before}spoons`, ask("SPOONS", { dye }, given.shop)[0][0]);
  }
  const mixedOn = facts["resin mixed on"];
  if (own > 0 && typeof mixedOn === "number") put("use by", ask("EXPIRY", { mixed: mixedOn }, given.shop)[0][0]);
}

/** The run as it was at a moment: without what was begun or ended later. */
const asOf = (run: Run, at: number): Run => {
  const known = (moment: number | undefined) => (moment !== undefined && moment <= at ? moment : undefined);
  return { ...run, steps: run.steps.map((step) => ({ ...step, started: known(step.started), done: known(step.done) })) };
};

/** The last moment at which the resin on hand can be used; undefined where there is none, or its date is unknown. */
export function usableUntil({ facts, offset }: Run): number | undefined {
  const useBy = facts["use by"];
  return typeof useBy === "number" ? momentOf(Math.floor(useBy) + 1, offset) : undefined;
}

/** Whether the resin on hand expires before the run is over; once mixing is done, as judged at that moment. */
export function isExpiring(run: Run, now: number): boolean {
  const until = usableUntil(run);
  if (until === undefined) return false;
  const at = run.steps.find(({ kind }) => kind === "mix")?.done ?? now;
  const ends = [...timeline(asOf(run, at), at).values()].map(({ to }) => to);
  return Math.max(...ends) >= until;
}

/** What is wrong with the date of the resin on hand. */
export function datedWrong({ facts, offset }: Run, now: number): "none" | "ahead" | undefined {
  if (!(Number(facts["resin on hand"] ?? 0) > 0)) return undefined;
  const mixedOn = facts["resin mixed on"];
  if (typeof mixedOn !== "number") return "none";
  return mixedOn >= Math.floor(serialOf(now, offset)) + 1 ? "ahead" : undefined;
}

/** A fact that depends on the resin on hand. */
export function resinFact(run: Run, name: string, now: number): number | undefined {
  const value = run.facts[(isExpiring(run, now) ? fresh : "") + name];
  return typeof value === "number" ? value : undefined;
}

export function mixingOf(run: Run, now: number): Mixing {
  const { facts } = run;
  const own = Number(facts["resin on hand"] ?? 0);
  const isFresh = isExpiring(run, now);
  const number = (name: string) => resinFact(run, name, now);
  const spoons = facts[`${isFresh ? fresh : ""}spoons`];
  return {
    onHand: isFresh ? 0 : own,
    ...{ mix: number("mix"), packets: number("packets"), dye: number("dye") },
    ...(typeof spoons === "string" ? { spoons } : {}),
    isFresh,
  };
}
