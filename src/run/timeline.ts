import { plainUnits } from "../../shared/unit";
import { daysOffArg } from "../plan/daysoff";
import { type Hours, hour, minute, openFrom } from "./hours";
import { countIn, type Run, type Step } from "./schema";
import { type KindName, kindOf } from "./stepkinds";

/** When a step runs: as it went, or as it will go if the next touch comes now. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Usual minutes of jobs that have no setting: common practice, no source. */
const usual: Partial<Record<KindName, number>> = { choose: 15, safety: 10, mix: 15, air: 10, weigh: 10, price: 5 };

const number = ({ facts }: Run, name: string, otherwise = 0): number => {
  const value = facts[name];
  return typeof value === "number" ? value : otherwise;
};

export function hoursOf(run: Run): Hours {
  const { "days off": off } = run.facts;
  const daysOff = typeof off === "string" && off !== "none" ? daysOffArg.read(off, plainUnits("US")) : undefined;
  return { opens: number(run, "opens"), closes: number(run, "closes", 24), offset: run.offset, daysOff };
}

const most = (run: Run, name: string, loads: readonly number[]): number =>
  Math.max(0, ...loads.map((load) => number(run, `${name} ${load}`)));
const total = (loads: readonly number[], of: (load: number) => number): number => loads.reduce((sum, load) => sum + of(load), 0);

/** The vacuum step before a soak. */
const vacuumOf = ({ steps }: Run, { loads }: Step): Step | undefined =>
  steps.find(({ kind, loads: its }) => kind === "vacuum" && its[0] === loads[0]);

/** How long a step takes, in milliseconds. */
export function lengthOf(run: Run, step: Step): number {
  const { kind, loads } = step;
  const loading = number(run, "loading minutes") * minute;
  switch (kind) {
    case "load":
      return loading * loads.length;
    case "vacuum":
      return number(run, "vacuum hours") * hour;
    case "soak": {
      const vacuum = vacuumOf(run, step);
      const taken = vacuum?.done !== undefined && vacuum.started !== undefined ? vacuum.done - vacuum.started : 0;
      return Math.max(number(run, "soak hours") * hour, 2 * taken);
    }
    case "drain":
      return loading * loads.length + total(loads, (load) => countIn(run, load)) * number(run, "wrap minutes per piece") * minute;
    case "bake":
      return total(loads, (load) => number(run, `bake ${load}`)) * minute;
    case "cool":
      return most(run, "cool", loads) * minute;
    default:
      return (usual[kind] ?? 0) * minute;
  }
}

/** What must be over before a step. */
export function needsOf({ steps, loads, facts }: Pick<Run, "steps" | "loads" | "facts">, step: Step): Step[] {
  const at = steps.indexOf(step);
  const last = (kind: KindName): Step | undefined => steps.slice(0, at).findLast((one) => one.kind === kind);
  const own = (kind: KindName): Step | undefined => steps.find((one) => one.kind === kind && one.loads[0] === step.loads[0]);
  const before: Record<KindName, (Step | undefined)[]> = {
    choose: [],
    safety: [last("choose")],
    mix: [last("safety")],
    // A tub is lifted out to soak; without one the chamber stays in use until the pieces are out.
    load: [last("mix"), last(facts.tub ? "air" : "drain")],
    vacuum: [own("load")],
    air: [own("vacuum")],
    soak: [own("air")],
    drain: [own("soak")],
    bake: [own("drain"), last("bake")],
    cool: [own("bake")],
    weigh: [own("cool")],
    price: loads.length ? steps.filter(({ kind }) => kind === "weigh") : [],
  };
  return before[step.kind].filter((one) => one !== undefined);
}

/** The steps from this one on that must be attended without a break. */
const sitting: Partial<Record<KindName, readonly KindName[]>> = { load: ["load", "vacuum", "air"], drain: ["drain", "bake"] };

function sittingOf(run: Run, step: Step): number {
  const kinds = sitting[step.kind] ?? [step.kind];
  return total(
    run.steps.flatMap(({ kind, loads }, i) => (kinds.includes(kind) && loads[0] === step.loads[0] ? [i] : [])),
    (i) => lengthOf(run, run.steps[i]),
  );
}

export const lastLoad = ({ steps }: Pick<Run, "steps">): Step => steps.findLast(({ kind }) => kind === "load")!;

/** Loading and vacuum begin at the touch, or at the demo. */
function isFree(run: Run, step: Step): boolean {
  const isIntake = kindOf(step.kind).once || step.kind === "load" || step.kind === "vacuum" || step.kind === "air";
  if (!isIntake || step.kind === "price") return false;
  return run.begins.how === "demo" ? step.loads[0] === lastLoad(run).loads[0] : step.loads[0] === undefined || step.loads[0] === 1;
}

/** Every step's span. Without a `now` it is the plan from `origin` on, whatever was done. */
export function timeline(run: Run, now?: number): ReadonlyMap<string, Span> {
  const spans = new Map<string, Span>();
  const hours = hoursOf(run);
  for (const step of run.steps) {
    const length = lengthOf(run, step);
    const needed = needsOf(run, step).map(({ id }) => spans.get(id)!.to);
    const demo = run.begins.how === "demo" && step === lastLoad(run) ? run.begins.at : 0;
    const ready = Math.max(run.origin, demo, ...needed);
    spans.set(step.id, now === undefined ? planned(run, step, ready, length, hours) : going(run, step, ready, length, hours, now));
  }
  return spans;
}

function planned(run: Run, step: Step, ready: number, length: number, hours: Hours): Span {
  const from = isFree(run, step) || kindOf(step.kind).alone ? ready : openFrom(ready, sittingOf(run, step), hours);
  return { from, to: from + length };
}

function going(run: Run, step: Step, ready: number, length: number, hours: Hours, now: number): Span {
  if (step.done !== undefined) return { from: step.started ?? step.done, to: step.done };
  if (step.started !== undefined)
    return { from: step.started, to: kindOf(step.kind).timed ? step.started + length : Math.max(now, step.started + length) };
  return planned(run, step, Math.max(ready, now), length, hours);
}
