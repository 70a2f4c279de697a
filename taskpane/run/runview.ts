import { html, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import type { List } from "../../src/checklist/schema";
import * as progress from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import type { Field } from "../../src/run/steplines";
import { View } from "../views/view";
import { Alarm } from "./alarm";
import { Bell } from "./bell";
import { Chooser } from "./chooser";
import { Entries } from "./entries";
import { goingView } from "./going";
import { earlierView, strayView, troubleView } from "./kept";
import { fillScreen } from "./large";
import { Session } from "./session";
import { Touches } from "./touches";

/** A run at the bench: one step at a time, by the clock on the wall. */
@customElement("pore-run")
export class RunView extends View {
  @state() private ready = false;
  @state() private now = Date.now();
  @state() private large = false;
  private session!: Session;
  private readonly chooser = new Chooser(() => this.requestUpdate());
  private looked: string | undefined;
  private readonly entries = new Entries();
  private readonly bell = new Bell();
  private readonly alarm = new Alarm(this.bell);
  private readonly touches = new Touches({
    run: () => this.run!,
    list: () => this.session.safety.list,
    touched: () => {
      this.bell.wake();
      this.now = Date.now();
    },
    change: (run, isOver) => {
      if (isOver) this.looked = undefined;
      this.change(run);
      this.focusOn("#run-title");
    },
    update: () => this.requestUpdate(),
    focusOn: (selector) => void this.focusOn(selector),
    openList: () => {
      const list = this.querySelector<HTMLDetailsElement>(".run-safety");
      if (list) list.open = true;
      return list !== null;
    },
  });
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

  /** Only the wall clock counts, so a tab that was suspended is right again at its next tick. */
  private tick = (): void => {
    this.now = Date.now();
    if (this.ready && this.run) this.alarm.watch(this.run, this.now);
  };

  private change(run: Run, words = ""): void {
    this.now = Date.now();
    this.touches.forget();
    this.session.change(run);
    this.tell(words);
  }

  private toTitle(): void {
    this.requestUpdate();
    this.focusOn("#run-title");
  }

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
    this.toTitle();
  };

  private readonly acts = {
    start: (step: Step) => this.touches.start(step),
    finish: (step: Step) => this.touches.finish(step),
    confirm: (step: Step) => this.touches.confirm(step),
    leave: () => this.touches.leave(),
    enter: (field: Field, typed: string) => {
      const run = this.entries.entered(this.run!, field, typed);
      if (run) this.change(run);
      this.requestUpdate();
    },
    read: (step: Step, typed: string) => {
      const run = this.entries.read(this.run!, step, typed, Date.now());
      if (run) {
        this.change(run);
        (this.querySelector("#run-gauge") as HTMLInputElement).value = "";
      }
      this.requestUpdate();
    },
    dropReading: (index: number) => this.change(progress.dropReading(this.run!, index)),
    setList: (list: List) => this.session.safety.set(list),
    safety: () => this.dispatchEvent(new CustomEvent("turn", { detail: "safety", bubbles: true })),
    undo: () => {
      if (!this.session.undo()) return;
      this.entries.wrong.clear();
      this.tell("Undone.");
    },
    reopen: (step: Step) => {
      this.looked = step.id;
      this.change(progress.reopen(this.run!, step.id), "Undone.");
      this.focusOn("#run-title");
    },
    look: (id: string) => {
      this.looked = id;
      this.toTitle();
    },
    putAside: () => {
      this.session.putAside();
      this.looked = undefined;
      this.entries.wrong.clear();
      this.alarm.rest();
      this.toTitle();
    },
    chooseAgain: async () => {
      this.chooser.isAgain = true;
      await this.session.look();
      this.toTitle();
    },
    askNotify: async () => {
      this.bell.wake();
      this.bell.ring();
      this.tell(await this.bell.invite());
      this.requestUpdate();
    },
    setLarge: async (on: boolean) => {
      this.large = on;
      await fillScreen(on);
      this.focusOn(on ? "#run-large-close" : "#run-large");
    },
  };

  private setup(): TemplateResult {
    const { stray, runs } = this.session.keeping;
    const cancel = () => {
      this.chooser.isAgain = false;
      this.toTitle();
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
          doubt: step && this.touches.doubtOf(step),
        },
        recorder: this.session.recorder,
        large: this.large,
        mayUndo: this.session.mayUndo,
        mayAskToNotify: this.bell.mayNotify === "default",
      },
      this.acts,
    );
  }

  override render(): TemplateResult {
    if (!this.ready) return html`<p class="quiet">Reading the workbook.</p>`;
    return html`${troubleView(this.session.keeping)}
      ${this.run && !this.chooser.isAgain ? this.going(this.run) : this.setup()}`;
  }
}
