import type { Run, Step } from "../schema";
import { unitsOf } from "../steplines";
import { type Mixing, mixingOf } from "../stock";

export const rounded = (value: number, figures = 4): number => Number(value.toPrecision(figures));
export const fact = ({ facts }: Run, name: string): number | undefined =>
  typeof facts[name] === "number" ? (facts[name] as number) : undefined;
export const loadsOf = (run: Run): number[] => run.loads.map((_, i) => i + 1);
export const stepFor = ({ steps }: Run, kind: Step["kind"], load: number): Step | undefined =>
  steps.find((step) => step.kind === kind && step.loads.includes(load));
export const spent = (step: Step | undefined): number | undefined =>
  step?.started !== undefined && step.done !== undefined ? step.done - step.started : undefined;

/** Resin that left with a load: from its two weights where both are there, else the calculated amount. */
export function takenBy(run: Run, load: number): { readonly amount: number; readonly weighed: boolean } | undefined {
  const [before, drained] = [run.entries[`before ${load}`], run.entries[`drained ${load}`]];
  const density = fact(run, "resin density") ?? 1.03;
  const grams = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 }[unitsOf(run).weight] ?? 1;
  if (before !== undefined && drained !== undefined && drained >= before)
    return { amount: ((drained - before) * grams) / density / (run.system === "US" ? 946.352946 : 1000), weighed: true };
  const uptake = fact(run, `uptake ${load}`);
  return uptake === undefined ? undefined : { amount: uptake + (fact(run, `drips ${load}`) ?? 0), weighed: false };
}

/** The moment that the run is dated by: its first loading. */
export const dated = (run: Run): number => {
  const load = run.steps.find(({ kind }) => kind === "load");
  return load?.started ?? load?.done ?? run.origin;
};

export const mixed = (run: Run): Mixing => mixingOf(run, dated(run));
