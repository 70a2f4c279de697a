import type { Block, SheetHost } from "../shared/host";
import { fresh, type Words } from "../src/checklist/list";
import { fromSheet, places, toSheet } from "../src/checklist/onsheet";
import { type Found, find, read, write } from "../src/checklist/part";
import type { List, Now } from "../src/checklist/schema";
import { draftOf, keepDraft } from "./draft";

/** What is being typed: a new item, or one that is being changed. */
export interface Editing {
  readonly id: string | undefined;
  readonly words: Words;
}

interface Draft {
  readonly place: string;
  /** The XML of the part when typing began. */
  readonly base?: string;
  readonly xml?: string;
  readonly editing?: Editing;
  readonly asked?: Now;
}

const draftName = "checklist";
/** An apostrophe before text that a cell would read as something else is not part of the text. */
const typed = (value: string | number | boolean) => (typeof value === "string" && /^['=+\-@\d]/.test(value) ? `'${value}` : value);
const said = (cell: unknown) => (typeof cell === "string" && cell.startsWith("'") ? cell.slice(1) : (cell ?? ""));
const same = (now: unknown, wanted: unknown): boolean => String(said(now)) === String(wanted);

const cellsOf = ({ cells }: Block) => cells.map((row) => row.map(said));

const parser = () => new DOMParser();
const full = "This workbook already holds nine lists that cannot be read, and has no room for more: your changes here are not kept.";

const one = new WeakMap<SheetHost, Keeping>();

/** Keeps the list inside the workbook, and in the browser what the workbook does not have yet. */
export class Keeping {
  list: List = fresh;
  unread: Found["unread"] = [];
  /** Why the workbook has not taken the list, in words; "" while all is well. */
  trouble = "";
  editing: Editing | undefined;
  /** The details typed for a new run; undefined while none is being started. */
  asked: Now | undefined;
  /** Whether the workbook has the sheet that shows the list. */
  isOnSheet = false;
  /** Set while this writes: the host then reports a change that nobody made. */
  private busy = false;
  /** Check marks made here that are not in the workbook yet: its sheet cannot overrule them. */
  private isAhead = false;
  private place = "";
  private kept: string | undefined;
  private writing: Promise<void> = Promise.resolve();
  private readonly heard = new Set<() => void>();

  private constructor(private readonly host: SheetHost) {}

  /** The one list of a workbook, for all who show it: a tick in the run is a tick in the list. */
  static of(host: SheetHost): Keeping {
    const own = one.get(host) ?? new Keeping(host);
    one.set(host, own);
    return own;
  }

  /** Calls back on every change; the function returned stops that. */
  listen(changed: () => void): () => void {
    this.heard.add(changed);
    return () => this.heard.delete(changed);
  }

  private changed(): void {
    for (const tell of this.heard) tell();
  }

  async load(): Promise<void> {
    this.editing = undefined;
    this.asked = undefined;
    let found: Found | undefined;
    try {
      found = await find((place) => this.host.readPart(place), parser());
    } catch (error) {
      this.trouble = `The workbook's own list cannot be read right now. ${(error as Error).message}`;
      return;
    }
    if (!found) {
      this.trouble = full;
      return;
    }
    this.trouble = "";
    this.isAhead = false;
    this.place = found.place;
    this.kept = found.xml;
    this.unread = found.unread;
    this.list = found.list ?? fresh;
    this.takeDraft();
    await this.follow();
  }

  /** Restores what was half typed before a reload, provided this is still the same workbook. */
  private takeDraft(): void {
    const draft = draftOf(draftName, (kept) => kept as Draft);
    if (!draft || draft.place !== this.place || draft.base !== this.kept) return;
    this.editing = draft.editing;
    this.asked = draft.asked;
    const part = draft.xml === undefined ? undefined : read(draft.xml, this.place, parser());
    if (part?.state === "read") this.set(part.list);
  }

  /** Drops what is not in the workbook yet. */
  forget(): void {
    keepDraft(draftName, undefined);
  }

  edit(editing: Editing | undefined): void {
    this.editing = editing;
    this.keepDraft(write(this.list, this.place));
  }

  start(asked: Now | undefined): void {
    this.asked = asked;
    this.keepDraft(write(this.list, this.place));
  }

  set(list: List): void {
    this.list = this.isOnSheet ? { ...list, onSheet: true } : list;
    this.save();
    this.changed();
  }

  /** Tries again what failed, reading first: a list that was not read is never overwritten. */
  async again(): Promise<void> {
    if (this.place) this.save();
    else await this.load();
    this.changed();
  }

  /** Writes one after the other, and only the newest list, once the person pauses. */
  save(): void {
    if (!this.place) return;
    const xml = write(this.list, this.place);
    this.isAhead = true;
    this.keepDraft(xml);
    this.writing = Promise.all([this.writing, this.host.pause?.()]).then(async () => {
      if (write(this.list, this.place) !== xml) return;
      this.busy = true;
      const ended = await this.host.writePart(this.place, xml);
      this.trouble = ended.done ? "" : ended.words;
      if (ended.done) {
        this.kept = xml;
        this.keepDraft(write(this.list, this.place));
        await this.show();
        if (write(this.list, this.place) === xml) this.isAhead = false;
      }
      this.busy = false;
      this.changed();
    });
  }

  /** Takes over what was ticked or typed on the sheet: the pane writes both, so any difference was made there. */
  async follow(): Promise<void> {
    if (this.busy || !this.place) return;
    const [run, list] = await Promise.all([this.host.contents(places.run), this.host.contents(places.list)]);
    this.isOnSheet = run !== undefined && list !== undefined;
    if (!run || !list || this.busy || this.isAhead) return;
    const followed = fromSheet(this.list, { run: cellsOf(run), list: cellsOf(list) });
    if (JSON.stringify(followed) === JSON.stringify(this.list)) return;
    // A sheet that was added later, or was never shown the list, does not overrule it.
    const isNews = this.list.onSheet || JSON.stringify(this.list) === JSON.stringify(fresh);
    this.set(isNews ? { ...followed, onSheet: true } : { ...this.list, onSheet: true });
  }

  /** Writes the list into the cells of the sheet that say something else. */
  private async show(): Promise<void> {
    const wanted = toSheet(this.list);
    const blocks: Block[] = [];
    for (const name of ["run", "list", "runs"] as const) {
      const now = await this.host.contents(places[name]);
      if (!now) continue;
      const cells = wanted[name].map((row, r) => row.map((value, c) => (same(now.cells[r]?.[c], value) ? null : typed(value))));
      if (cells.some((row) => row.some((cell) => cell !== null))) blocks.push({ at: now.at, cells });
    }
    if (!blocks.length) return;
    const ended = await this.host.put(blocks);
    if (!ended.done) this.trouble = `The sheet Safety does not show the last change. ${ended.words}`;
  }

  private keepDraft(xml: string): void {
    const { place, kept: base, editing, asked } = this;
    const typed = editing !== undefined || asked !== undefined;
    const waits = xml !== (base ?? write(fresh, place));
    keepDraft(draftName, waits || typed ? { place, base, editing, asked, ...(waits && { xml }) } : undefined);
  }
}
