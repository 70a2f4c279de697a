import type { Ended } from "../../shared/host";
import { Unreadable } from "../../shared/xlsx/unzip";
import { draftOf, keepDraft } from "../../taskpane/draft";
import type { Fault } from "../book";
import type { Desk } from "./desk";
import { fileOf } from "./download";
import { digestOf } from "./kept/digest";
import { Keeper, type State, Stuck } from "./kept/keeper";
import { type Hold, hold, isHeld } from "./kept/lock";
import { freeOnShelf, tidy } from "./kept/name";
import { contentAt, newestOf } from "./kept/newest";
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
  /** What of it the engine could not give: a formula with its cell, or a kind of looks. All else is kept. */
  readonly missing?: readonly string[];
  /** Why it is not kept, where that is known. */
  readonly why?: string;
}

export interface Around {
  readonly desk: Desk;
  readonly tell: (standing: Standing) => void;
  /** Says what a person should know and did not ask for. */
  readonly note: (words: string) => void;
  /** Whether changes that cannot be kept may be lost. */
  readonly mayLose: () => Promise<boolean>;
  /** What there is where nothing is kept. */
  readonly first: () => Promise<{ readonly name: string; readonly content: Content }>;
}

const draftName = "workbook on the page";
const dayOf = (moment: number) => new Date(moment).toDateString();
const done: Ended = { done: true };
const refused = (words: string): Ended => ({ done: false, words });
const inOtherTab = refused("It is open in another tab: close it there first.");
const stays = refused("The workbook on the page stays open: its last changes are not saved yet. Download it as a file first.");
const tooLong = (name: string) =>
  `Some formulas of ${name} take longer than 20 seconds, or fill more than five million cells: they show an error until you change them. They are kept as they are.`;

/** The workbooks that this browser keeps, one of them on the desk. */
export class Library {
  private standing: Standing | undefined;
  private keeper: Keeper | undefined;
  private lock: Hold | undefined;
  private waiting: AbortController | undefined;
  /** What was put on the desk and not changed since: it is kept as it came, which need not be asked of the engine. */
  private fresh: Content | undefined;

  constructor(private readonly around: Around) {}

  get current(): Standing {
    if (!this.standing) throw new Error("No workbook is open yet.");
    return this.standing;
  }

  /** Whether something was typed that is not kept yet. */
  get waits(): boolean {
    return this.keeper?.waits ?? false;
  }

  changed(): void {
    this.fresh = undefined;
    this.keeper?.changed();
  }

  flush(): Promise<boolean> {
    return this.keeper?.flush() ?? Promise.resolve(true);
  }

  /** Opens what this tab had, or what was changed last, or the first workbook of all. */
  async begin(): Promise<void> {
    const kept = await store.shelf().catch(() => []);
    const own = draftOf(draftName, String);
    const inOrder = [...kept.filter(({ id }) => id === own), ...kept.filter(({ id }) => id !== own)];
    for (const { id } of inOrder) {
      const ended = await this.open(id);
      if (ended.done) return;
      this.around.note(ended.words);
    }
    const { name, content } = await this.around.first();
    // Keeping it may take its time: the page is ready before.
    await this.start(name, content, false);
  }

  /** Puts a kept workbook on the desk. A version that cannot be read is set aside, and the one before it opens. */
  async open(id: string): Promise<Ended> {
    if (this.isOwn(id)) return done;
    return (await this.mayLeave()) ? this.openHeld(id, await hold(id)) : stays;
  }

  private async openHeld(id: string, lock: Hold | undefined): Promise<Ended> {
    try {
      const ended = await this.openWith(id, lock);
      if (!ended.done) lock?.release();
      return ended;
    } catch {
      lock?.release();
      return refused("This browser cannot read the workbook right now. Reload the page to try again.");
    }
  }

  private async openWith(id: string, lock: Hold | undefined): Promise<Ended> {
    const book = (await store.shelf()).find((one) => one.id === id);
    if (!book) return refused("This workbook is no longer here: it was deleted.");
    const { name } = book;
    let over = false;
    const { moment, words } = await newestOf(book, lock !== undefined, async (content) => {
      const put = await this.put(id, content, { readOnly: !lock });
      over = put.over;
      return put.why === undefined;
    });
    if (moment === undefined) return refused(words);
    this.take({ id, name, state: lock ? "kept" : "read only", moment }, lock);
    for (const note of [words, over ? tooLong(name) : ""]) if (note) this.around.note(note);
    return done;
  }

  /** A new workbook, on the desk and kept. */
  async create(name: string, content: Content): Promise<Ended> {
    const ended = await this.start(name, content);
    await this.flush();
    return ended;
  }

  private async start(name: string, content: Content, strict = true): Promise<Ended> {
    if (!(await this.mayLeave())) return stays;
    const id = crypto.randomUUID();
    const { why } = await this.put(id, content, { fresh: true, strict });
    if (why !== undefined) return refused(`${name} does not open: ${why}. The workbook before is still on the page.`);
    this.take({ id, name: await freeOnShelf(name), state: "waiting", moment: 0 }, await hold(id));
    this.keeper?.changed();
    return done;
  }

  /** Puts other content in the place of what this workbook holds; what it held stays a version. */
  async replace(content: Content): Promise<Ended> {
    if (this.current.state === "read only") return inOtherTab;
    const { keeper } = this;
    if (!(await this.mayLeave())) return stays;
    const { why } = await this.put(this.current.id, content);
    if (why !== undefined) return refused(`It does not open: ${why}. The workbook is as it was.`);
    this.keeper = keeper;
    this.changed();
    await this.flush();
    return done;
  }

  /** Makes an earlier version the newest; what came after it stays a version too. */
  async goBack(id: string, moment: number): Promise<Ended> {
    const content = await contentAt(id, moment);
    if (!content) return refused("This version cannot be read. Nothing was changed.");
    return this.goBackTo(id, content);
  }

  /** Puts what a workbook held once in the place of what it holds; that stays a version. */
  async goBackTo(id: string, content: Content): Promise<Ended> {
    const opened = await this.open(id);
    return opened.done ? this.replace(content) : opened;
  }

  async rename(id: string, name: string): Promise<Ended> {
    if (!tidy(name)) return refused("A workbook needs a name: type one.");
    const own = this.isOwn(id);
    if (!own && (await isHeld(id))) return inOtherTab;
    const free = await freeOnShelf(name, id);
    await store.rename(id, free);
    if (own) this.stand({ name: free });
    return done;
  }

  /** Deletes a workbook and its versions for good; the newest of the others, or the first of all, takes its place on the desk. */
  async remove(id: string): Promise<Ended> {
    const own = this.isOwn(id);
    if (!own && (await isHeld(id))) return inOtherTab;
    if (own) await this.leaveFor(() => store.remove(id));
    else {
      await store.remove(id);
      // There may be room now for what waits.
      await this.flush();
    }
    return done;
  }

  /** Deletes all workbooks and what was set aside, for good: all or none. */
  async removeAll(): Promise<Ended> {
    const others = (await store.shelf()).map(({ id }) => id).filter((id) => !this.isOwn(id));
    if (await isHeld(...others)) return refused("One of them is open in another tab: close it there first. Nothing was deleted.");
    await this.leaveFor(store.removeAll);
    return done;
  }

  /** Whether this tab has the right to change a workbook. */
  private isOwn(id: string): boolean {
    return id === this.standing?.id && this.standing.state !== "read only";
  }

  /** Gives the workbook on the page up for good, and opens another. */
  private async leaveFor(remove: () => Promise<void>): Promise<void> {
    await this.flush();
    this.keeper = undefined;
    await remove();
    // Not before: a tab that waits for the right to change it must find nothing.
    this.letGo();
    this.standing = undefined;
    await this.begin();
  }

  /** What a workbook holds now, without opening it; undefined where it cannot be read. */
  async contentOf(id: string): Promise<Content | undefined> {
    return id === this.standing?.id ? this.around.desk.content() : contentAt(id);
  }

  /** As much of what a workbook holds as tells what saving it would lose. */
  async shapeOf(id: string): Promise<Content | undefined> {
    return id === this.standing?.id ? this.around.desk.shape() : contentAt(id);
  }

  /** What a workbook holds, or what it held at a moment, as a file for any spreadsheet program. */
  async fileOf(id: string, moment?: number): Promise<Uint8Array | undefined> {
    if (moment === undefined && id === this.standing?.id) return this.around.desk.file();
    const content = await contentAt(id, moment);
    return content && fileOf(content);
  }

  /** Keeps what waits; what cannot be kept is given up only when a person says so. */
  private mayLeave = async (): Promise<boolean> => (await this.flush()) || this.around.mayLose();

  /** Answers why it could not be shown, if so. What happens on the desk meanwhile is kept for neither workbook. */
  private async put(
    id: string,
    content: Content,
    {
      readOnly = false,
      fresh = false,
      strict = false,
    }: { readonly readOnly?: boolean; readonly fresh?: boolean; readonly strict?: boolean } = {},
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

  private letGo(): void {
    this.waiting?.abort();
    this.lock?.release();
    this.lock = undefined;
  }

  private take(standing: Standing, lock: Hold | undefined): void {
    this.letGo();
    this.lock = lock;
    keepDraft(draftName, standing.id);
    this.standing = standing;
    this.around.tell(standing);
    if (standing.state === "read only") void this.wait(standing.id);
    else
      this.keeper = new Keeper(
        (moment) => this.save(moment),
        (state, moment, why) => this.stand({ state, moment, why }),
        standing.moment,
      );
  }

  /** Once the other tab lets go, the workbook opens anew, to be changed here. */
  private async wait(id: string): Promise<void> {
    this.waiting = new AbortController();
    const { signal } = this.waiting;
    const lock = await hold(id, signal);
    if (!lock) return;
    const ended = await this.openHeld(id, lock);
    if (!ended.done) this.around.note(`${ended.words} What you see is not saved anywhere: save it as a file if you want it.`);
  }

  private stand(change: Partial<Standing>): void {
    this.standing = { ...this.current, ...change };
    this.around.tell(this.standing);
  }

  private async save(moment: number): Promise<void> {
    const { id, name } = this.current;
    const { content, faults } = this.told();
    const file = content.file && { bytes: content.file, digest: await digestOf(content.file) };
    await store.keepVersion(id, name, moment, toKeep(content, file?.digest), file);
    this.standing = { ...this.current, missing: faults.map(({ what }) => what) };
    await store.forgetVersions(id, toForget(await store.momentsOf(id), dayOf));
  }

  private told(): { readonly content: Content; readonly faults: readonly Fault[] } {
    if (this.fresh) return { content: this.fresh, faults: [] };
    try {
      return this.around.desk.told();
    } catch (error) {
      throw new Stuck((error as Error).message);
    }
  }
}
