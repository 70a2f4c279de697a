import type { List } from "../../src/checklist/schema";
import { type Doubt, doubtOf } from "../../src/run/doubts";
import { finish, start } from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import { today } from "../today";
import { spell } from "./clockwords";

/** What a touch asks of the view that shows the run. */
export interface Around {
  readonly run: () => Run;
  readonly list: () => List;
  /** A person touched a step: the browser allows sound from here on, and the clock is read anew. */
  readonly touched: () => void;
  readonly change: (run: Run, isOver: boolean) => void;
  readonly update: () => void;
  readonly focusOn: (selector: string) => void;
  /** Opens the step's part of the safety list; answers whether there is one. */
  readonly openList: () => boolean;
}

/** The touches that begin and end a step: where something speaks against one, it is asked first, and once. */
export class Touches {
  private asked: (Doubt & { readonly step: string; readonly go: typeof start }) | undefined;

  constructor(private readonly around: Around) {}

  /** What is asked about a step just now. */
  doubtOf({ id }: Step): Doubt | undefined {
    return this.asked?.step === id ? this.asked : undefined;
  }

  forget(): void {
    this.asked = undefined;
  }

  start(step: Step): void {
    this.touch(step, start);
  }

  finish(step: Step): void {
    this.touch(step, finish);
  }

  /** The person was asked, and goes on. */
  confirm(step: Step): void {
    const { asked } = this;
    this.asked = undefined;
    if (asked?.step === step.id) this.goOn(step, asked.go);
    this.around.update();
  }

  /** The person was asked, and does not go on. */
  leave(): void {
    const hasList = this.asked?.isList === true && this.around.openList();
    this.asked = undefined;
    this.around.update();
    this.around.focusOn(hasList ? ".run-safety summary" : "#run-touch");
  }

  private touch(step: Step, go: typeof start): void {
    const { run, list, touched, update, focusOn } = this.around;
    touched();
    const doubt = doubtOf(run(), step, { list: list(), today: today(), now: Date.now(), telling: { spell } });
    this.asked = doubt && { ...doubt, step: step.id, go };
    if (doubt) focusOn("#run-leave");
    else this.goOn(step, go);
    update();
  }

  private goOn(step: Step, go: typeof start): void {
    this.around.change(go(this.around.run(), step.id, Date.now()), go === finish);
  }
}
