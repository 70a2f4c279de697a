import type { SheetHost } from "../shared/host";
import { fresh, type Words } from "../src/checklist/list";
import { type Found, find, read, write } from "../src/checklist/part";
import type { List } from "../src/checklist/schema";
import { draftOf, keepDraft } from "./draft";

/** What is being typed: a new item, or one that is being changed. */
export interface Editing {
  readonly id: string | undefined;
  readonly words: Words;
}

interface Draft {
  readonly place: string;
  /** The part as the workbook had it when typing began. */
  readonly base?: string;
  readonly xml?: string;
  readonly editing?: Editing;
  readonly who?: string;
}

const draftName = "checklist";
const parser = () => new DOMParser();
const full = "This workbook holds nine lists that cannot be read, and room for no more: what you change here is not kept.";

/** Keeps the list inside the workbook, and what is not there yet in the browser until it is. */
export class Keeping {
  list: List = fresh;
  unread: Found["unread"] = [];
  /** Why the workbook has not taken the list, in words; "" while all is well. */
  trouble = "";
  editing: Editing | undefined;
  /** Who ran the last run, as far as it is typed; undefined while nobody starts a new one. */
  who: string | undefined;
  private place = "";
  private kept: string | undefined;
  private writing: Promise<void> = Promise.resolve();

  constructor(
    private readonly host: SheetHost,
    private readonly changed: () => void,
  ) {}

  async load(): Promise<void> {
    let found: Found | undefined;
    try {
      found = await find((place) => this.host.readPart(place), parser());
    } catch (error) {
      this.trouble = `The workbook's own list cannot be read just now. ${(error as Error).message}`;
      return;
    }
    if (!found) {
      this.trouble = full;
      return;
    }
    this.trouble = "";
    this.place = found.place;
    this.kept = found.xml;
    this.unread = found.unread;
    this.list = found.list ?? fresh;
    this.takeDraft();
  }

  /** What a reload interrupted goes on, provided this is still the workbook that it was typed for. */
  private takeDraft(): void {
    const draft = draftOf(draftName, (kept) => kept as Draft);
    if (!draft || draft.place !== this.place || draft.base !== this.kept) return;
    this.editing = draft.editing;
    this.who = draft.who;
    const part = draft.xml === undefined ? undefined : read(draft.xml, this.place, parser());
    if (part?.state === "read") this.set(part.list);
  }

  /** Leaves what is not in the workbook yet. */
  forget(): void {
    keepDraft(draftName, undefined);
  }

  edit(editing: Editing | undefined): void {
    this.editing = editing;
    this.keepDraft(write(this.list, this.place));
  }

  start(who: string | undefined): void {
    this.who = who;
    this.keepDraft(write(this.list, this.place));
  }

  set(list: List): void {
    this.list = list;
    this.save();
  }

  /** Tries again what did not work: to read the list first of all, for what was not read is never written over. */
  async again(): Promise<void> {
    if (this.place) this.save();
    else await this.load();
    this.changed();
  }

  /** One writing after the other, and the newest list only. */
  save(): void {
    if (!this.place) return;
    const xml = write(this.list, this.place);
    this.keepDraft(xml);
    this.writing = this.writing.then(async () => {
      if (write(this.list, this.place) !== xml) return;
      const ended = await this.host.writePart(this.place, xml);
      this.trouble = ended.done ? "" : ended.words;
      if (ended.done) {
        this.kept = xml;
        this.keepDraft(xml);
      }
      this.changed();
    });
  }

  private keepDraft(xml: string): void {
    const { place, kept: base, editing, who } = this;
    const typed = editing !== undefined || who !== undefined;
    const waits = xml !== (base ?? write(fresh, place));
    keepDraft(draftName, waits || typed ? { place, base, editing, who, ...(waits && { xml }) } : undefined);
  }
}
