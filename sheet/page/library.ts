import type { Ended } from "../../shared/host";
import { draftOf } from "../../taskpane/draft";
import { Current, draftName, type Standing } from "./current";
import type { Desk } from "./desk";
import { fileOf } from "./download";
import { type Hold, hold, isHeld } from "./kept/lock";
import { freeOnShelf, tidy } from "./kept/name";
import { contentAt, newestOf } from "./kept/newest";
import * as store from "./kept/store";
import type { Content } from "./kept/work";

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

const done: Ended = { done: true };
const refused = (words: string): Ended => ({ done: false, words });
const inOtherTab = refused("It is open in another tab: close it there first.");
const stays = refused("The workbook on the page stays open: its last changes are not saved yet. Download it as a file first.");
const tooLong = (name: string) =>
  `Some formulas of ${name} take longer than 20 seconds, or fill more than five million cells: they show an error until you change them. They are kept as they are.`;

/** The workbooks that this browser keeps, one of them on the desk. */
export class Library {
  private readonly held: Current;

  constructor(private readonly around: Around) {
    this.held = new Current({ ...around, openHeld: (id, lock) => this.openHeld(id, lock) });
  }

  get current(): Standing {
    if (!this.held.standing) throw new Error("No workbook is open yet.");
    return this.held.standing;
  }

  /** Whether something was typed that is not kept yet. */
  get waits(): boolean {
    return this.held.waits;
  }

  changed(): void {
    this.held.changed();
  }

  flush(): Promise<boolean> {
    return this.held.flush();
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
    if (this.held.owns(id)) return done;
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
      const put = await this.held.put(id, content, { readOnly: !lock });
      over = put.over;
      return put.why === undefined;
    });
    if (moment === undefined) return refused(words);
    this.held.take({ id, name, state: lock ? "kept" : "read only", moment }, lock);
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
    const { why } = await this.held.put(id, content, { fresh: true, strict });
    if (why !== undefined) return refused(`${name} does not open: ${why}. The workbook before is still on the page.`);
    this.held.take({ id, name: await freeOnShelf(name), state: "waiting", moment: 0 }, await hold(id));
    return done;
  }

  /** Puts other content in the place of what this workbook holds; what it held stays a version. */
  async replace(content: Content): Promise<Ended> {
    if (this.current.state === "read only") return inOtherTab;
    if (!(await this.mayLeave())) return stays;
    const why = await this.held.replace(content);
    return why === undefined ? done : refused(`It does not open: ${why}. The workbook is as it was.`);
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
    const own = this.held.owns(id);
    if (!own && (await isHeld(id))) return inOtherTab;
    const free = await freeOnShelf(name, id);
    await store.rename(id, free);
    if (own) this.held.stand({ name: free });
    return done;
  }

  /** Deletes a workbook and its versions for good; the newest of the others, or the first of all, takes its place on the desk. */
  async remove(id: string): Promise<Ended> {
    const own = this.held.owns(id);
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
    const others = (await store.shelf()).map(({ id }) => id).filter((id) => !this.held.owns(id));
    if (await isHeld(...others)) return refused("One of them is open in another tab: close it there first. Nothing was deleted.");
    await this.leaveFor(store.removeAll);
    return done;
  }

  /** Gives the workbook on the page up for good, and opens another. */
  private async leaveFor(remove: () => Promise<void>): Promise<void> {
    await this.held.giveUp(remove);
    await this.begin();
  }

  /** What a workbook holds now, without opening it; undefined where it cannot be read. */
  async contentOf(id: string): Promise<Content | undefined> {
    return id === this.held.standing?.id ? this.around.desk.content() : contentAt(id);
  }

  /** As much of what a workbook holds as tells what saving it would lose. */
  async shapeOf(id: string): Promise<Content | undefined> {
    return id === this.held.standing?.id ? this.around.desk.shape() : contentAt(id);
  }

  /** What a workbook holds, or what it held at a moment, as a file for any spreadsheet program. */
  async fileOf(id: string, moment?: number): Promise<Uint8Array | undefined> {
    if (moment === undefined && id === this.held.standing?.id) return this.around.desk.file();
    const content = await contentAt(id, moment);
    return content && fileOf(content);
  }

  /** Keeps what waits; what cannot be kept is given up only when a person says so. */
  private mayLeave = async (): Promise<boolean> => (await this.flush()) || this.around.mayLose();
}
