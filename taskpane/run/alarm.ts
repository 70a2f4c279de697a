import { isOver } from "../../src/run/progress";
import type { Run } from "../../src/run/schema";
import { kindOf } from "../../src/run/stepkinds";
import { timeline } from "../../src/run/timeline";
import { Awake, type Bell } from "./bell";
import { titleOf } from "./step";

/** A bell that nobody answers rings again after a minute, ten times. */
const again = 60_000;
const rings = 10;

/** Tells when the time of a step is up, and keeps the screen on until then. */
export class Alarm {
  private readonly awake = new Awake();
  private readonly rung = new Map<string, { at: number; times: number }>();

  constructor(private readonly bell: Bell) {}

  watch(run: Run, now: number): void {
    const spans = timeline(run, now);
    const running = run.steps.filter((step) => kindOf(step.kind).timed && step.started !== undefined && !isOver(step));
    this.awake.hold(running.length > 0);
    for (const step of running) {
      if (spans.get(step.id)!.to > now) continue;
      const key = `${run.id} ${step.id} ${step.started}`;
      const last = this.rung.get(key) ?? { at: 0, times: 0 };
      if (last.times >= rings || now - last.at < again) continue;
      this.rung.set(key, { at: now, times: last.times + 1 });
      this.bell.ring();
      if (!last.times) void this.bell.notify(`${titleOf(run, step)}: time is up.`);
    }
  }

  rest(): void {
    this.awake.hold(false);
  }
}
