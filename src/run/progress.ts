import { type Run, type Step, stepOf } from "./schema";
import { kindOf } from "./stepkinds";
import { needsOf, timeline } from "./timeline";

/** Every touch makes a new run, so that it can be undone. */

const changed = (run: Run, change: Partial<Run>): Run => ({ ...run, ...change, revision: run.revision + 1 });

const withStep = (run: Run, id: string, change: (step: Step) => Step): Run =>
  changed(run, { steps: run.steps.map((step) => (step.id === id ? change(step) : step)) });

export const start = (run: Run, id: string, now: number): Run => withStep(run, id, (step) => ({ ...step, started: now, done: undefined }));

/** Ends a step; a soak and a cooling begin by themselves when what comes before them is over. */
export function finish(run: Run, id: string, now: number): Run {
  const ended = withStep(run, id, (step) => ({ ...step, started: step.started ?? now, done: now }));
  const first = stepOf(run, id).loads[0];
  const begins = (step: Step) => kindOf(step.kind).alone && !step.started && step.loads[0] === first && isOpen(ended, step);
  return { ...ended, steps: ended.steps.map((step) => (begins(step) ? { ...step, started: now } : step)) };
}

/** Undoes the touch that ended or began a step, and the steps that began by themselves with it. */
export function reopen(run: Run, id: string): Run {
  const step = stepOf(run, id);
  const moment = step.done ?? step.started;
  return changed(run, {
    steps: run.steps.map((one) => {
      if (one.id === id)
        return one.done !== undefined && timedOrBegun(one) ? { ...one, done: undefined } : { ...one, started: undefined, done: undefined };
      const alone = kindOf(one.kind).alone && one.started === moment && one.loads[0] === step.loads[0];
      return alone ? { ...one, started: undefined, done: undefined } : one;
    }),
  });
}

/** A step that was begun by a touch of its own goes on when its end is taken back. */
const timedOrBegun = ({ started, done }: Step): boolean => started !== done;

export const isOver = ({ done }: Step): boolean => done !== undefined;

/** All that must be over before a step is over. */
export const isOpen = (run: Run, step: Step): boolean => needsOf(run, step).every(isOver);

/** Steps under way or due, the soonest first; the view shows the first. */
export function current(run: Run, now: number): Step[] {
  const spans = timeline(run, now);
  const open = run.steps.filter((step) => !isOver(step) && isOpen(run, step));
  // A step that waits for a person comes before one that runs by itself.
  const wait = (step: Step) => (kindOf(step.kind).timed && step.started !== undefined ? spans.get(step.id)!.to : 0);
  return open.sort((a, b) => wait(a) - wait(b) || run.steps.indexOf(a) - run.steps.indexOf(b));
}

export const isFinished = (run: Run): boolean => run.steps.every(isOver);

export function enter(run: Run, name: string, value: number | undefined): Run {
  const { [name]: _, ...others } = run.entries;
  return changed(run, { entries: value === undefined ? others : { ...others, [name]: value } });
}

export const addReading = (run: Run, step: string, at: number, gauge: number): Run =>
  changed(run, { readings: [...run.readings, { step, at, gauge }] });

export const dropReading = (run: Run, index: number): Run => changed(run, { readings: run.readings.filter((_, i) => i !== index) });

export const recorded = (run: Run, record: Run["record"]): Run => changed(run, { record });
