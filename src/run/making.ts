import { capital } from "../../shared/capital";
import type { Answers } from "./answers";
import { factsOf } from "./facts";
import type { Given } from "./found";
import { hour, minute } from "./hours";
import type { Run, Step } from "./schema";
import { type KindName, kindNames, kindOf } from "./stepkinds";
import { timeline } from "./timeline";

/** What a person chooses. */
export interface Choice extends Given {
  readonly id: string;
  readonly color: string;
  readonly begins: Run["begins"];
  readonly offset: number;
}

/** The loads that share a chamber: [1, 2] and [3]. */
function pulls(loads: number, together: number): number[][] {
  const all = Array.from({ length: loads }, (_, i) => i + 1);
  return Array.from({ length: Math.ceil(loads / together) }, (_, i) => all.slice(i * together, (i + 1) * together));
}

const beforeLoading: readonly KindName[] = ["choose", "safety", "mix"];

/** The steps in the order of the work; what several loads share is one step. */
function stepsOf(loads: number, together: number): Step[] {
  const once = (kind: KindName): Step => ({ id: kind, kind, loads: [], planned: 0 });
  const each = kindNames.filter((kind) => !kindOf(kind).once);
  const own = pulls(loads, together).flatMap((its) =>
    each.map((kind): Step => ({ id: `${kind}-${its[0]}`, kind, loads: its, planned: 0 })),
  );
  return [...beforeLoading.map(once), ...own, once("price")];
}

/** "Spalted boxelder, 14". */
function nameOf({ loads }: Pick<Run, "loads">): string {
  const pieces = loads.flatMap((load) => load.pieces);
  const names = [...new Set(pieces.map(({ name, wood }) => name || wood))];
  const count = pieces.reduce((sum, piece) => sum + piece.count, 0);
  const said = names.length > 2 ? `${names[0]} and ${names.length - 1} more` : names.join(", ");
  return `${capital(said)}, ${count}`.slice(0, 300);
}

const quarter = 15 * minute;
const furthest = (14 * 24 * hour) / quarter;

/** The steps that must be over when the demo begins: load 1 is cut open there, and with a third load, load 2 goes into the oven. */
function ready(run: Run, origin: number): boolean {
  const spans = timeline({ ...run, origin });
  const first = [...new Set(run.steps.filter(({ kind }) => kind === "load").map(({ loads }) => loads[0]))];
  const last = first.at(-1)!;
  const due = [spans.get("mix")!.to];
  if (first.length > 1) due.push(spans.get(`cool-${first[0]}`)!.to);
  if (first.length > 2) due.push(spans.get(`drain-${first[1]}`)!.to);
  return due.every((end) => end <= run.begins.at) && spans.get(`load-${last}`)!.from <= run.begins.at;
}

/** The latest quarter hour to start so that all is ready for the demo; two weeks before it where there is none. */
function originOf(run: Run): number {
  if (run.begins.how === "now") return run.begins.at;
  for (let back = 0; back <= furthest; back++) if (ready(run, run.begins.at - back * quarter)) return run.begins.at - back * quarter;
  return run.begins.at - furthest * quarter;
}

/** A run with its numbers and its plan. */
export function runOf(choice: Choice, answers: Answers): Run {
  const { facts, faults } = factsOf(choice, answers);
  const bare: Run = {
    ...choice,
    shop: choice.shop.map(([name, value]) => [name, value]),
    name: nameOf(choice),
    facts,
    faults,
    origin: 0,
    steps: stepsOf(choice.loads.length, choice.together),
    entries: {},
    readings: [],
    revision: 0,
  };
  const run = { ...bare, origin: originOf(bare) };
  const spans = timeline(run);
  return { ...run, steps: run.steps.map((step) => ({ ...step, planned: spans.get(step.id)!.from })) };
}
