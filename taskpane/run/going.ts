import { html, nothing, type TemplateResult } from "lit";
import { answers } from "../../src/run/answers";
import { leakOf } from "../../src/run/leak";
import { isOver } from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import { largeView } from "./large";
import { recordView } from "./record";
import type { Recorder } from "./recorder";
import { aheadView, allSteps, type StepActs, stepView, type Typed } from "./step";

interface Going {
  readonly run: Run;
  /** The step in sight; undefined once the run is over. */
  readonly step: Step | undefined;
  readonly now: number;
  readonly typed: Omit<Typed, "leak">;
  readonly recorder: Recorder;
  readonly large: boolean;
  readonly mayUndo: boolean;
  readonly mayAskToNotify: boolean;
}

interface GoingActs extends StepActs {
  readonly look: (id: string) => void;
  readonly undo: () => void;
  readonly setLarge: (on: boolean) => void;
  readonly askNotify: () => void;
  readonly chooseAgain: () => void;
  readonly putAside: () => void;
  readonly reopen: (step: Step) => void;
}

const isUntouched = ({ steps }: Run): boolean => steps.every(({ started, done }) => started === undefined && done === undefined);

/** A run under way: the step in sight, what comes, and what else can be done. */
export function goingView({ run, step, now, typed, recorder, large, mayUndo, mayAskToNotify }: Going, acts: GoingActs): TemplateResult {
  const done = run.steps.filter(isOver).length;
  const leak = step ? leakOf(run, step.id, answers) : "";
  return html`
    <p class="run-name"><span>${run.name}</span> <span class="run-at">${Math.min(done + 1, run.steps.length)} of ${run.steps.length}</span></p>
    ${step ? stepView(run, step, { ...typed, leak }, acts, now) : html`<h2 id="run-title" tabindex="-1">The run is over</h2>`}
    ${!step || step.kind === "price" ? recordView(run, recorder) : nothing}
    ${step ? aheadView(run, step, now, acts.look) : nothing}
    <div class="run-row">
      <button type="button" class="run-small" id="run-undo" ?disabled=${!mayUndo} @click=${acts.undo}>Undo</button>
      ${step ? html`<button type="button" class="run-small" id="run-large" @click=${() => acts.setLarge(true)}>Show large</button>` : nothing}
      ${step && mayAskToNotify ? html`<button type="button" class="run-small" id="run-notify" @click=${acts.askNotify}>Ring and notify me</button>` : nothing}
      ${isUntouched(run) ? html`<button type="button" class="run-small" id="run-choose" @click=${acts.chooseAgain}>Change the run</button>` : nothing}
      ${step ? nothing : html`<button type="button" class="run-second" id="run-new" @click=${acts.putAside}>Start another run</button>`}
    </div>
    ${allSteps(run, now, acts.reopen)}
    ${step && !isUntouched(run) ? html`<details class="run-all"><summary>Set this run aside</summary><p>It stays readable under Earlier runs, and you can start a new one.</p><button type="button" class="run-second" id="run-aside" @click=${acts.putAside}>Set it aside</button></details>` : nothing}
    ${large && step ? largeView(run, step, now, () => acts.setLarge(false)) : nothing}`;
}
