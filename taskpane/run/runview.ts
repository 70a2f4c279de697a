import { html, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import type { List } from "../../src/checklist/schema";
import { type Doubt, doubtOf } from "../../src/run/doubts";
import type { Field } from "../../src/run/lines";
import * as progress from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import { today } from "../today";
import { View } from "../views/view";
import { Alarm } from "./alarm";
import { Bell } from "./bell";
import { Chooser } from "./chooser";
import { Entries } from "./entries";
import { goingView } from "./going";
import { earlierView, strayView, troubleView } from "./kept";
import { fillScreen } from "./large";
import { Session } from "./session";
import { spell } from "./told";

/** A run at the bench: one step at a time, by the clock on the wall. */
@customElement("pore-run")
export class RunView extends View {
  @state() private ready = false;
  @state() private now = Date.now();
  @state() private large = false;
  private session!: Session;
  private doubt: (Doubt & { readonly step: string; readonly go: typeof progress.start }) | undefined;
  private readonly chooser = new Chooser(() => this.requestUpdate());
  private looked: string | undefined;
  private readonly entries = new Entries();
  private readonly bell = new Bell();
  private readonly alarm = new Alarm(this.bell);
  private timer: ReturnType<typeof setInterval> | undefined;

  private get run(): Run | undefined {
    return this.session.run;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.timer = setInterval(this.tick, 1000);
    document.addEventListener("visibilitychange", this.tick);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearInterval(this.timer);
    this.session?.end();
    document.removeEventListener("visibilitychange", this.tick);
  }

  override firstUpdated(): void {
    this.session = new Session(this.host, () => this.requestUpdate());
    this.load();
    this.host.replaced?.((other) => {
      if (other) this.chooser.forget();
      this.session = this.session.renewed(other);
      this.load();
    });
  }

  private async load(): Promise<void> {
    const { session } = this;
    await session.load();
    if (session !== this.session) return;
    this.ready = true;
    this.requestUpdate();
  }

  /** The wall clock alone counts: a tab that slept is right again at its next tick. */
  private tick = (): void => {
    this.now = Date.now();
    if (this.ready && this.run) this.alarm.watch(this.run, this.now);
  };

  private change(run: Run, words = ""): void {
    this.now = Date.now();
    this.doubt = undefined;
    this.session.change(run);
    this.tell(words);
  }

  private undo = (): void => {
    if (!this.session.undo()) return;
    this.entries.wrong.clear();
    this.tell("Undone.");
  };

  private inSight(run: Run): Step | undefined {
    const open = progress.current(run, this.now);
    return open.find(({ id }) => id === this.looked) ?? open[0];
  }

  private begin = (event: Event): void => {
    event.preventDefault();
    this.bell.wake();
    const chosen = this.chooser.chosen(this.session.sources!);
    if ("field" in chosen) {
      this.focusOn(`#${chosen.field}`);
      return;
    }
    this.session.begin(chosen);
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  private readonly acts = {
    start: (step: Step) => this.touch(step, progress.start),
    finish: (step: Step) => this.touch(step, progress.finish),
    confirm: (step: Step) => this.go(step),
    leave: () => this.leaveDoubt(),
    enter: ({ name }: Field, typed: string) => {
      const isEmpty = typed.trim() === "";
      const number = this.entries.take(name, typed, (one) => isEmpty || one >= 0);
      if (number !== undefined) this.change(progress.enter(this.run!, name, isEmpty ? undefined : number));
      this.requestUpdate();
    },
    read: (step: Step, typed: string) => {
      const number = this.entries.take("gauge", typed, (one) => !Number.isNaN(one));
      if (number !== undefined) {
        this.change(progress.addReading(this.run!, step.id, Date.now(), Math.abs(number)));
        (this.querySelector("#run-gauge") as HTMLInputElement).value = "";
      }
      this.requestUpdate();
    },
    dropReading: (index: number) => this.change(progress.dropReading(this.run!, index)),
    setList: (list: List) => this.session.safety.set(list),
    safety: () => this.dispatchEvent(new CustomEvent("turn", { detail: "safety", bubbles: true })),
  };

  /** Begins or ends a step, or asks first what stands against it. */
  private touch(step: Step, go: typeof progress.start): void {
    this.bell.wake();
    this.now = Date.now();
    const sight = { list: this.session.safety.list, today: today(), now: this.now, telling: { spell } };
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
    this.session.putAside();
    this.looked = undefined;
    this.entries.wrong.clear();
    this.alarm.rest();
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  private askNotify = async (): Promise<void> => {
    this.bell.wake();
    this.bell.ring();
    this.tell(await this.bell.invite());
    this.requestUpdate();
  };

  private setLarge = async (on: boolean): Promise<void> => {
    this.large = on;
    await fillScreen(on);
    this.focusOn(on ? "#run-large-close" : "#run-large");
  };

  private setup(): TemplateResult {
    const { stray, runs } = this.session.keeping;
    const cancel = () => {
      this.chooser.isAgain = false;
      this.requestUpdate();
      this.focusOn("#run-title");
    };
    return html`${strayView(stray, this.now, { take: () => this.session.settleStray(true), leave: () => this.session.settleStray(false) })}
      ${this.chooser.form(this.session.sources!, { begin: this.begin, cancel })}
      ${earlierView(runs.earlier)}`;
  }

  private going(run: Run): TemplateResult {
    const step = this.inSight(run);
    return goingView(
      {
        run,
        step,
        now: this.now,
        typed: {
          wrong: this.entries.wrong,
          list: this.session.safety.list,
          doubt: step && this.doubt?.step === step.id ? this.doubt : undefined,
        },
        recorder: this.session.recorder,
        large: this.large,
        mayUndo: this.session.mayUndo,
        mayAskToNotify: this.bell.mayNotify === "default",
      },
      {
        ...this.acts,
        look: this.look,
        undo: this.undo,
        setLarge: this.setLarge,
        askNotify: this.askNotify,
        chooseAgain: this.chooseAgain,
        putAside: this.putAside,
        reopen: this.reopen,
      },
    );
  }

  private look = (id: string): void => {
    this.looked = id;
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  private chooseAgain = async (): Promise<void> => {
    this.chooser.isAgain = true;
    await this.session.look();
    this.requestUpdate();
    this.focusOn("#run-title");
  };

  override render(): TemplateResult {
    if (!this.ready) return html`<p class="quiet">Reading the workbook.</p>`;
    return html`${troubleView(this.session.keeping)}
      ${this.run && !this.chooser.isAgain ? this.going(this.run) : this.setup()}`;
  }
}
