import type { Ended } from "../../shared/host";
import { Unreadable } from "../../shared/xlsx/unzip";
import { keepDraft } from "../../taskpane/draft";
import type { Fault } from "../book";
import type { Desk } from "./desk";
import { digestOf } from "./kept/digest";
import { Keeper, type State, Stuck } from "./kept/keeper";
import { type Hold, hold } from "./kept/lock";
import * as store from "./kept/store";
import { toForget } from "./kept/versions";
import { type Content, toKeep } from "./kept/work";

/** What a person sees of the workbook on the page. */
export interface Standing {
  readonly id: string;
  readonly name: string;
  readonly state: State | "read only";
  /** When it was kept last. */
  readonly moment: number;
  /** What the engine could not export: a formula with its cell, or a kind of formatting. All else is kept. */
  readonly missing?: readonly string[];
  /** Why it is not kept, where that is known. */
  readonly why?: string;
}

export const draftName = "workbook on the page";
const dayOf = (moment: number) => new Date(moment).toDateString();

interface Around {
  readonly desk: Desk;
  readonly tell: (standing: Standing) => void;
  /** Says what a person should know and did not ask for. */
  readonly note: (words: string) => void;
  /** Opens a workbook anew, to be changed here. */
  readonly openHeld: (id: string, lock: Hold) => Promise<Ended>;
}

interface Putting {
  readonly readOnly?: boolean;
  readonly fresh?: boolean;
  readonly strict?: boolean;
}

/** The workbook on the desk: how it stands, the right to change it, and the keeping of it. */
export class Current {
  private told: Standing | undefined;
  private keeper: Keeper | undefined;
  private lock: Hold | undefined;
  private waiting: AbortController | undefined;
  /** Content that was opened and not changed since: it is kept as it came, without an export by the engine. */
  private fresh: Content | undefined;

  constructor(private readonly around: Around) {}

  get standing(): Standing | undefined {
    return this.told;
  }

  /** Whether something was typed that is not kept yet. */
  get waits(): boolean {
    return this.keeper?.waits ?? false;
  }

  /** Whether this tab has the right to change a workbook. */
  owns(id: string): boolean {
    return id === this.told?.id && this.told.state !== "read only";
  }

  changed(): void {
    this.fresh = undefined;
    this.keeper?.changed();
  }

  flush(): Promise<boolean> {
    return this.keeper?.flush() ?? Promise.resolve(true);
  }

  /** Returns why it could not be shown, if so. Changes meanwhile are kept for neither workbook. */
  async put(
    id: string,
    content: Content,
    { readOnly = false, fresh = false, strict = false }: Putting = {},
  ): Promise<{ readonly why?: string; readonly over: boolean }> {
    const { keeper } = this;
    this.keeper = undefined;
    this.fresh = fresh ? content : undefined;
    try {
      if (content.file) await digestOf(content.file);
      return await this.around.desk.show(id, content, readOnly, strict);
    } catch (error) {
      this.keeper = keeper;
      this.fresh = undefined;
      const why = error instanceof Unreadable ? error.message : `the spreadsheet on this page fails on it (${(error as Error).message})`;
      return { why, over: false };
    }
  }

  /** Puts other content in the place of what this workbook holds; the same keeping goes on. */
  async replace(content: Content): Promise<string | undefined> {
    const { keeper } = this;
    const { why } = await this.put(this.told!.id, content);
    if (why !== undefined) return why;
    this.keeper = keeper;
    this.changed();
    await this.flush();
    return undefined;
  }

  /** The desk holds this workbook now; one that was never kept is kept as it came. */
  take(standing: Standing, lock: Hold | undefined): void {
    this.letGo();
    this.lock = lock;
    keepDraft(draftName, standing.id);
    this.told = standing;
    this.around.tell(standing);
    if (standing.state === "read only") {
      void this.wait(standing.id);
      return;
    }
    this.keeper = new Keeper(
      (moment) => this.save(moment),
      (state, moment, why) => this.stand({ state, moment, why }),
      standing.moment,
    );
    if (standing.state === "waiting") this.keeper.changed();
  }

  /** Gives it up for good: nothing that is on the desk now is kept any more. */
  async giveUp(remove: () => Promise<void>): Promise<void> {
    await this.flush();
    this.keeper = undefined;
    await remove();
    // Not earlier: a tab that waits for this lock must then find nothing.
    this.letGo();
    this.told = undefined;
  }

  /** Releases the lock, so that another tab may change the workbook. */
  private letGo(): void {
    this.waiting?.abort();
    this.lock?.release();
    this.lock = undefined;
  }

  /** Once the other tab lets go, the workbook opens anew, to be changed here. */
  private async wait(id: string): Promise<void> {
    this.waiting = new AbortController();
    const { signal } = this.waiting;
    const lock = await hold(id, signal);
    if (!lock) return;
    const ended = await this.around.openHeld(id, lock);
    if (!ended.done) this.around.note(`${ended.words} What you see is not saved anywhere: save it as a file if you want it.`);
  }

  stand(change: Partial<Standing>): void {
    this.told = { ...this.told!, ...change };
    this.around.tell(this.told);
  }

  private async save(moment: number): Promise<void> {
    const { id, name } = this.told!;
    const { content, faults } = this.whole();
    const file = content.file && { bytes: content.file, digest: await digestOf(content.file) };
    await store.keepVersion(id, name, moment, toKeep(content, file?.digest), file);
    this.told = { ...this.told!, missing: faults.map(({ what }) => what) };
    await store.forgetVersions(id, toForget(await store.momentsOf(id), dayOf));
  }

  private whole(): { readonly content: Content; readonly faults: readonly Fault[] } {
    if (this.fresh) return { content: this.fresh, faults: [] };
    try {
      return this.around.desk.told();
    } catch (error) {
      throw new Stuck((error as Error).message);
    }
  }
}
