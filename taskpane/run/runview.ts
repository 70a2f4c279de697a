import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import type { List } from "../../src/checklist/schema";
import { answers } from "../../src/run/answers";
import { type Doubt, doubtOf } from "../../src/run/doubts";
import { leakOf } from "../../src/run/leak";
import type { Field } from "../../src/run/lines";
import { runOf } from "../../src/run/making";
import * as progress from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import { draftOf, keepDraft } from "../draft";
import { Keeping } from "../keeping";
import { type Sources, sourcesOf } from "../sources";
import { today } from "../today";
import { View } from "../views/view";
import { Alarm } from "./alarm";
import { Bell } from "./bell";
import { choiceOf, type Draft, firstDraft, type Slip } from "./choosing";
import { RunKeeping } from "./keeping";
import { largeView } from "./large";
import { recordView } from "./record";
import { Recorder } from "./recorder";
import { setupForm } from "./setup";
import { aheadView, allSteps, stepView } from "./step";
import { spell } from "./told";

const draftName = "run being chosen";
const undoSteps = 50;

const numberOf = (typed: string): number => (/^[-+]?\d*[.,]?\d+$/.test(typed.trim()) ? Number(typed.trim().replace(",", ".")) : Number.NaN);

/** A run at the bench: one step at a time, by the clock on the wall. */
@customElement("pore-run")
export class RunView extends View {
  @state() private ready = false;
  @state() private now = Date.now();
  @state() private large = false;
  private keeping!: RunKeeping;
  private recorder!: Recorder;
  private safety!: Keeping;
  private deaf: (() => void) | undefined;
  private sources: Sources | undefined;
  private draft: Draft | undefined;
  private slip: Slip | undefined;
  private doubt: (Doubt & { readonly step: string; readonly go: typeof progress.start }) | undefined;
  private choosing = false;
  private past: Run[] = [];
  private looked: string | undefined;
  private readonly wrong = new Map<string, string>();
  private readonly bell = new Bell();
  private readonly alarm = new Alarm(this.bell);
  private timer: ReturnType<typeof setInterval> | undefined;

  private get run(): Run | undefined {
    return this.keeping.runs.now;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.timer = setInterval(this.tick, 1000);
    document.addEventListener("visibilitychange", this.tick);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearInterval(this.timer);
    this.deaf?.();
    document.removeEventListener("visibilitychange", this.tick);
  }

  override firstUpdated(): void {
    this.load();
    this.host.replaced?.((other) => {
      if (other) {
        keepDraft(draftName, undefined);
        this.draft = undefined;
        this.past = [];
      }
      this.load();
    });
  }

  private async load(): Promise<void> {
    this.keeping = new RunKeeping(this.host, () => this.requestUpdate());
    this.recorder = new Recorder(this.host, this.keeping, () => this.requestUpdate());
    this.safety = Keeping.of(this.host);
    this.deaf?.();
    this.deaf = this.safety.listen(() => this.requestUpdate());
    await Promise.all([this.keeping.load(), this.safety.load()]);
    this.sources = await sourcesOf(this.host, -new Date().getTimezoneOffset());
    this.ready = true;
    this.requestUpdate();
  }

  /** The wall clock alone counts: a tab that slept is right again at its next tick. */
  private tick = (): void => {
    this.now = Date.now();
    if (this.ready && this.run) this.alarm.watch(this.run, this.now);
  };

  private change(run: Run, words = ""): void {
    if (this.run) this.past = [...this.past, this.run].slice(-undoSteps);
    this.now = Date.now();
    this.doubt = undefined;
    this.keeping.setRun(run);
    this.requestUpdate();
    this.tell(words);
  }

  private undo = (): void => {
    const last = this.past.pop();
    if (!last || !this.run) return;
    this.keeping.setRun({ ...last, revision: this.run.revision + 1 });
    this.wrong.clear();
    this.requestUpdate();
    this.tell("Undone.");
  };

  private inSight(run: Run): Step | undefined {
    const open = progress.current(run, this.now);
    return open.find(({ id }) => id === this.looked) ?? open[0];
  }

  private setDraft = (draft: Draft): void => {
    this.draft = draft;
    this.slip = undefined;
    keepDraft(draftName, draft);
    this.requestUpdate();
  };

  private begin = (event: Event): void => {
    event.preventDefault();
    this.bell.wake();
    const choice = choiceOf(this.draft!, this.sources!, answers, Date.now());
    if ("field" in choice) {
      this.slip = choice;
      this.requestUpdate();
      this.focusOn(`#${choice.field}`);
      return;
    }
    this.choosing = false;
    this.past = [];
    this.keeping.setRun(runOf(choice, answers));
    keepDraft(draftName, undefined);
    this.draft = undefined;
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  private readonly acts = {
    start: (step: Step) => this.touch(step, progress.start),
    finish: (step: Step) => this.touch(step, progress.finish),
    confirm: (step: Step) => this.go(step),
    leave: () => this.leaveDoubt(),
    enter: ({ name }: Field, typed: string) => {
      const number = numberOf(typed);
      if (typed.trim() !== "" && !(number >= 0)) this.wrong.set(name, typed);
      else {
        this.wrong.delete(name);
        this.change(progress.enter(this.run!, name, typed.trim() === "" ? undefined : number));
      }
      this.requestUpdate();
    },
    read: (step: Step, typed: string) => {
      const number = Math.abs(numberOf(typed));
      if (Number.isNaN(number)) this.wrong.set("gauge", typed);
      else {
        this.wrong.delete("gauge");
        this.change(progress.addReading(this.run!, step.id, Date.now(), number));
        (this.querySelector("#run-gauge") as HTMLInputElement).value = "";
      }
      this.requestUpdate();
    },
    dropReading: (index: number) => this.change(progress.dropReading(this.run!, index)),
    setList: (list: List) => this.safety.set(list),
    safety: () => this.dispatchEvent(new CustomEvent("turn", { detail: "safety", bubbles: true })),
  };

  /** Begins or ends a step, or asks first what stands against it. */
  private touch(step: Step, go: typeof progress.start): void {
    this.bell.wake();
    this.now = Date.now();
    const sight = { list: this.safety.list, today: today(), now: this.now, telling: { spell } };
    const doubt = doubtOf(this.run!, step, sight);
    this.doubt = doubt && { ...doubt, step: step.id, go };
    if (doubt) this.focusOn("#run-leave");
    else this.goOn(step, go);
    this.requestUpdate();
  }

  private go(step: Step): void {
    const { doubt } = this;
    this.doubt = undefined;
    if (doubt?.step === step.id) this.goOn(step, doubt.go);
    this.requestUpdate();
  }

  private goOn(step: Step, go: typeof progress.start): void {
    if (go === progress.finish) this.looked = undefined;
    this.change(go(this.run!, step.id, Date.now()));
    this.focusOn("#run-title");
  }

  private leaveDoubt(): void {
    const list = this.doubt?.isList ? this.querySelector<HTMLDetailsElement>(".run-safety") : undefined;
    this.doubt = undefined;
    if (list) list.open = true;
    this.requestUpdate();
    this.focusOn(list ? ".run-safety summary" : "#run-touch");
  }

  private reopen = (step: Step): void => {
    this.looked = step.id;
    this.change(progress.reopen(this.run!, step.id), "Undone.");
    this.focusOn("#run-title");
  };

  private putAside = (): void => {
    this.keeping.putAside();
    this.past = [];
    this.looked = undefined;
    this.wrong.clear();
    this.alarm.rest();
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  private askNotify = async (): Promise<void> => {
    this.bell.wake();
    this.bell.ring();
    const answer = await this.bell.askToNotify();
    this.tell(
      answer === "granted"
        ? "The bell rings, and a notification comes with it."
        : "The bell rings while this stays open. Notifications are off in this browser.",
    );
    this.requestUpdate();
  };

  private setLarge = async (on: boolean): Promise<void> => {
    this.large = on;
    try {
      if (on) await document.documentElement.requestFullscreen?.();
      else if (document.fullscreenElement) await document.exitFullscreen();
    } catch {
      // Where there is no full screen it fills what there is.
    }
    this.focusOn(on ? "#run-large-close" : "#run-large");
  };

  private setup(): TemplateResult {
    this.draft ??= draftOf(draftName, (kept) => kept as Draft) ?? firstDraft(this.sources!);
    const cancel = () => {
      this.choosing = false;
      this.requestUpdate();
      this.focusOn("#run-title");
    };
    return html`${this.strayView()}
      ${setupForm(this.draft, this.sources!, this.slip, { change: this.setDraft, begin: this.begin, ...(this.choosing ? { cancel } : {}) })}
      ${this.earlier()}`;
  }

  private strayView(): TemplateResult | typeof nothing {
    const { stray } = this.keeping;
    if (!stray) return nothing;
    const take = () => {
      this.keeping.setRun(stray);
      this.requestUpdate();
    };
    const leave = () => {
      this.keeping.dropStray();
      this.requestUpdate();
    };
    return html`<div class="notice"><p>A run that began ${spell(this.now - stray.origin)} ago is not in this workbook: ${stray.name}.</p>
      <div class="run-row"><button type="button" class="run-second" id="run-take" @click=${take}>Continue it here</button><button type="button" class="run-small" @click=${leave}>Cancel</button></div></div>`;
  }

  private earlier(): TemplateResult | typeof nothing {
    const { earlier } = this.keeping.runs;
    if (!earlier.length) return nothing;
    return html`<details class="run-all" id="run-earlier"><summary>Earlier runs</summary><ul>${earlier.map(
      (run) =>
        html`<li>${new Date(run.origin).toLocaleDateString(run.system === "US" ? "en-US" : "sv-SE")}: ${run.name}${run.record?.stands ? ", written down" : ""}</li>`,
    )}</ul></details>`;
  }

  private touchless(run: Run): boolean {
    return run.steps.every(({ started, done }) => started === undefined && done === undefined);
  }

  private going(run: Run): TemplateResult {
    const step = this.inSight(run);
    const done = run.steps.filter(progress.isOver).length;
    const typed = {
      wrong: this.wrong,
      leak: step ? leakOf(run, step.id, answers) : "",
      list: this.safety.list,
      doubt: step && this.doubt?.step === step.id ? this.doubt : undefined,
    };
    const look = (id: string) => {
      this.looked = id;
      this.requestUpdate();
      this.focusOn("#run-title");
    };
    return html`
      <p class="run-name"><span>${run.name}</span> <span class="run-at">${Math.min(done + 1, run.steps.length)} of ${run.steps.length}</span></p>
      ${step ? stepView(run, step, typed, this.acts, this.now) : html`<h2 id="run-title" tabindex="-1">The run is over</h2>`}
      ${!step || step.kind === "price" ? recordView(run, this.recorder) : nothing}
      ${step ? aheadView(run, step, this.now, look) : nothing}
      <div class="run-row">
        <button type="button" class="run-small" id="run-undo" ?disabled=${!this.past.length} @click=${this.undo}>Undo</button>
        ${step ? html`<button type="button" class="run-small" id="run-large" @click=${() => this.setLarge(true)}>Show large</button>` : nothing}
        ${step && this.bell.mayNotify === "default" ? html`<button type="button" class="run-small" id="run-notify" @click=${this.askNotify}>Ring and notify me</button>` : nothing}
        ${this.touchless(run) ? html`<button type="button" class="run-small" id="run-choose" @click=${this.chooseAgain}>Change the run</button>` : nothing}
        ${step ? nothing : html`<button type="button" class="run-second" id="run-new" @click=${this.putAside}>Start another run</button>`}
      </div>
      ${allSteps(run, this.now, this.reopen)}
      ${step && !this.touchless(run) ? html`<details class="run-all"><summary>Set this run aside</summary><p>It stays readable under Earlier runs, and you can start a new one.</p><button type="button" class="run-second" id="run-aside" @click=${this.putAside}>Set it aside</button></details>` : nothing}
      ${this.large && step ? largeView(run, step, this.now, () => this.setLarge(false)) : nothing}`;
  }

  private chooseAgain = async (): Promise<void> => {
    this.choosing = true;
    this.sources = await sourcesOf(this.host, -new Date().getTimezoneOffset());
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  override render(): TemplateResult {
    if (!this.ready) return html`<p class="quiet">Reading the workbook.</p>`;
    const { trouble, unread } = this.keeping;
    const again = () => this.keeping.again();
    return html`
      ${trouble ? html`<div class="notice failed" role="alert"><p>This run is not in the workbook yet. ${trouble} It is kept in this browser meanwhile.</p><button type="button" class="run-second" @click=${again}>Try again</button></div>` : nothing}
      ${unread.length ? html`<p class="notice">${unread.length === 1 ? "One record of runs" : `${unread.length} records of runs`} in this workbook cannot be read. It stays as it is.</p>` : nothing}
      ${this.run && !this.choosing ? this.going(this.run) : this.setup()}`;
  }
}
