import { html, nothing, type TemplateResult } from "lit";
import type { List } from "../../src/checklist/schema";
import { type Doubt, itemsAt } from "../../src/run/doubts";
import { problemsOf } from "../../src/run/problems";
import { isOver } from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import { type Kind, kindOf } from "../../src/run/stepkinds";
import { type Field, linesOf, piecesIn, unitsOf } from "../../src/run/steplines";
import { timeline } from "../../src/run/timeline";
import { clockTime, countdown, dayOf, spell } from "./clockwords";
import { safetyItems } from "./safetyitems";

export interface StepActs {
  readonly start: (step: Step) => void;
  readonly finish: (step: Step) => void;
  readonly enter: (field: Field, typed: string) => void;
  readonly read: (step: Step, typed: string) => void;
  readonly dropReading: (index: number) => void;
  readonly safety: () => void;
  readonly setList: (list: List) => void;
  readonly confirm: (step: Step) => void;
  readonly leave: () => void;
}

export interface Typed {
  /** Text of the fields that is no number, by field name. */
  readonly wrong: ReadonlyMap<string, string>;
  readonly leak: string;
  /** The safety list of the workbook. */
  readonly list: List;
  /** The doubt about the touch that was just made. */
  readonly doubt: Doubt | undefined;
}

export const titleOf = (run: Run, step: Step): string => {
  const { title } = kindOf(step.kind);
  if (run.loads.length === 1 || !step.loads.length) return title;
  return `${title}: load ${step.loads.join(" and ")}`;
};

/** The hours of a step: "2:10 PM to 6:10 PM". */
const spanWords = (run: Run, from: number, to: number, now: number): string => {
  const [a, b] = [clockTime(from, run.system, now), clockTime(to, run.system, now)];
  return a === b ? a : `${a} to ${b}`;
};

export const telling = (run: Run, now: number) => ({ moment: (at: number) => clockTime(at, run.system, now), spell, day: dayOf });

const amount = (text: number | undefined) => (text === undefined ? "" : String(Number(text.toPrecision(3))));

function field(run: Run, own: Field, { wrong }: Typed, { enter }: StepActs): TemplateResult {
  const id = `entry-${own.name.replace(" ", "-")}`;
  const entry = run.entries[own.name];
  const bad = wrong.get(own.name);
  const due = own.expected === undefined ? "" : `expected ${amount(own.expected)}`;
  return html`<div class="run-field">
    <label for=${id}>${own.label}, ${own.unit}</label>
    <input id=${id} inputmode="decimal" autocomplete="off" .value=${bad ?? (entry === undefined ? "" : String(entry))} placeholder=${due}
      aria-invalid=${bad !== undefined} aria-describedby=${bad === undefined ? nothing : `${id}-slip`}
      @change=${(event: Event) => enter(own, (event.target as HTMLInputElement).value)} />
    ${bad === undefined ? nothing : html`<p class="fault" id="${id}-slip">“${bad}” is no number. Type a number in ${own.unit}, such as ${own.expected ? amount(own.expected) : 2}.</p>`}
  </div>`;
}

function gauge(run: Run, step: Step, { wrong, leak }: Typed, acts: StepActs, now: number): TemplateResult {
  const unit = unitsOf(run).pressure;
  const read = (event: Event) => {
    event.preventDefault();
    acts.read(step, (document.getElementById("run-gauge") as HTMLInputElement).value);
  };
  const bad = wrong.get("gauge");
  const own = run.readings.flatMap((reading, index) => (reading.step === step.id ? [{ ...reading, index }] : []));
  return html`<form class="run-gauge" @submit=${read} novalidate>
    <div class="run-field"><label for="run-gauge">Gauge now, ${unit}</label>
      <input id="run-gauge" inputmode="decimal" autocomplete="off" .value=${bad ?? ""} aria-invalid=${bad !== undefined} /></div>
    <button type="submit" class="run-second" id="run-read">Note it</button>
    ${bad === undefined ? nothing : html`<p class="fault">“${bad}” is not a reading. Type what the gauge shows, such as 28.</p>`}
  </form>
  ${own.length ? html`<ul class="run-readings">${own.slice(-4).map(({ at, gauge: shown, index }) => html`<li>${clockTime(at, run.system, now)}: ${shown} ${unit} <button type="button" class="plain" aria-label="Remove the reading of ${clockTime(at, run.system, now)}" @click=${() => acts.dropReading(index)}>Remove</button></li>`)}</ul>` : nothing}
  ${leak ? html`<p class="run-leak">${leak}</p>` : own.length === 1 ? html`<p class="quiet">Shut the pump off, wait a few minutes, and note it again: two readings tell a leak.</p>` : nothing}`;
}

/** The time first: what is left of a step that counts down, or when the step is due. */
export function clockOf(run: Run, step: Step, now: number): TemplateResult {
  const { from, to } = timeline(run, now).get(step.id)!;
  const kind: Kind = kindOf(step.kind);
  const isRunning = step.started !== undefined && !isOver(step);
  if (!kind.timed || !isRunning) return html`<p class="run-clock">${spanWords(run, from, to, now)}</p>`;
  const left = to - now;
  return html`<p class="run-clock">until ${clockTime(to, run.system, now)}</p>
    <p class="run-count" role="timer" data-over=${left < 0}>${left < 0 ? html`<span class="run-over">time is up</span> ` : nothing}${countdown(left)}</p>`;
}

/** The one touch that begins or ends a step. */
function touch(step: Step, list: List, acts: StepActs): TemplateResult {
  const kind: Kind = kindOf(step.kind);
  const waits = kind.timed && step.started === undefined;
  const allChecked = step.kind !== "safety" || itemsAt(list, step.kind).every(({ done }) => done);
  const words = waits ? `Start ${kind.title.toLowerCase()}` : allChecked ? kind.done : "Continue";
  return html`<button type="button" class="run-go" id="run-touch" @click=${() => (waits ? acts.start(step) : acts.finish(step))}>${words}</button>`;
}

/** Asks once; either answer is allowed. */
function doubtView(step: Step, { words, yes, no }: Doubt, acts: StepActs): TemplateResult {
  const leave = (event: KeyboardEvent) => event.key === "Escape" && acts.leave();
  return html`<div class="run-doubt" role="alertdialog" aria-labelledby="run-doubt" @keydown=${leave}>
    <p id="run-doubt">${words.join(" ")}</p>
    <button type="button" class="run-second" id="run-leave" @click=${acts.leave}>${no}</button>
    <button type="button" class="run-go" id="run-confirm" @click=${() => acts.confirm(step)}>${yes}</button>
  </div>`;
}

export function stepView(run: Run, step: Step, typed: Typed, acts: StepActs, now: number): TemplateResult {
  const kind: Kind = kindOf(step.kind);
  const { say, fields } = linesOf(run, step, now);
  const problems = problemsOf(run, step, now, telling(run, now));
  return html`<section class="run-step" data-kind=${step.kind} aria-labelledby="run-title">
    ${clockOf(run, step, now)}
    <h2 id="run-title" tabindex="-1">${titleOf(run, step)}</h2>
    ${say.map((words) => html`<p class="run-say">${words}</p>`)}
    ${problems.map((words) => html`<p class="run-problem" role="note">${words}</p>`)}
    ${step.kind === "vacuum" ? gauge(run, step, typed, acts, now) : nothing}
    ${fields.map((own) => field(run, own, typed, acts))}
    ${safetyItems(typed.list, step.kind, acts.setList)}
    ${step.kind === "safety" ? html`<button type="button" class="run-small" id="run-safety" @click=${acts.safety}>Change the list, or see earlier runs</button>` : nothing}
    <p class="run-caution"><span aria-hidden="true">!</span> ${kind.caution}</p>
    ${typed.doubt ? doubtView(step, typed.doubt, acts) : touch(step, typed.list, acts)}
  </section>`;
}

/** What else goes on, and the next three steps. */
export function aheadView(run: Run, shown: Step, now: number, look: (id: string) => void): TemplateResult {
  const spans = timeline(run, now);
  const running = run.steps.filter((step) => step !== shown && step.started !== undefined && !isOver(step));
  const next = run.steps
    .filter((step) => step !== shown && step.started === undefined && !isOver(step))
    .sort((a, b) => spans.get(a.id)!.from - spans.get(b.id)!.from)
    .slice(0, 3);
  const line = (step: Step, words: string) => html`<li><span class="run-when-at">${words}</span> ${titleOf(run, step)}</li>`;
  return html`
    ${
      running.length
        ? html`<h3>Going on</h3><ul class="run-ahead">${running.map((step) => {
            const left = spans.get(step.id)!.to - now;
            return html`<li data-over=${left < 0}><button type="button" class="run-small" @click=${() => look(step.id)}><span class="run-when-at">${countdown(left)}</span> ${titleOf(run, step)}${left < 0 ? ": time is up" : ""}</button></li>`;
          })}</ul>`
        : nothing
    }
    ${next.length ? html`<h3>Next</h3><ul class="run-ahead" id="run-next">${next.map((step) => line(step, clockTime(spans.get(step.id)!.from, run.system, now)))}</ul>` : nothing}`;
}

/** The whole run, for whoever wants to look ahead or back. */
export function allSteps(run: Run, now: number, reopen: (step: Step) => void): TemplateResult {
  const spans = timeline(run, now);
  const last = run.steps.filter(isOver).sort((a, b) => b.done! - a.done! || run.steps.indexOf(b) - run.steps.indexOf(a))[0];
  return html`<details class="run-all"><summary>All steps</summary>
    <ol>${run.steps.map((step) => {
      const { from, to } = spans.get(step.id)!;
      const problems = isOver(step) ? [] : problemsOf(run, step, now, telling(run, now));
      return html`<li data-done=${isOver(step)}>
        <span class="run-when-at">${spanWords(run, from, to, now)}</span> ${titleOf(run, step)}${isOver(step) ? html` <span class="run-done">done</span>` : nothing}
        ${problems.map((words) => html`<p class="run-problem">${words}</p>`)}
        ${step === last ? html`<button type="button" class="run-small" id="run-reopen" @click=${() => reopen(step)}>Take back: ${titleOf(run, step)}</button>` : nothing}
      </li>`;
    })}</ol>
    <p class="quiet">${run.loads.map((_, i) => `${run.loads.length > 1 ? `Load ${i + 1}: ` : ""}${piecesIn(run, i + 1)}`).join(". ")}</p>
  </details>`;
}
