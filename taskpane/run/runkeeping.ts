import { createStore, del, get, set, type UseStore } from "idb-keyval";
import type { SheetHost } from "../../shared/host";
import { findPart, readPart, writePart } from "../../shared/part";
import { type Runs, runsForm } from "../../src/run/part";
import type { Run } from "../../src/run/schema";

const mostEarlier = 30;
const copyName = "run";
let opened: UseStore | undefined;
/** IndexedDB, not localStorage: that reaches the disk only seconds later. */
const copies = (): UseStore => {
  opened ??= createStore("porewise run", "copies");
  return opened;
};
/** A copy untouched for longer, in milliseconds, is not offered any more. */
const fresh = 3 * 24 * 3_600_000;

interface Copy {
  readonly xml: string;
  readonly touched: number;
  /** The workbook that it was begun in, where the host tells them apart. */
  readonly workbook: string | undefined;
}

const full = "This workbook already holds nine records of runs that cannot be read, and has no room for more: this run is not kept in it.";

/** Keeps the runs inside the workbook, and a copy in the browser in case that is killed before the workbook is kept. */
export class RunKeeping {
  runs: Runs = { earlier: [] };
  unread: readonly { readonly state: string; readonly xml: string }[] = [];
  trouble = "";
  /** A run that this browser has and the workbook does not. */
  stray: Run | undefined;
  private place = "";
  private writing: Promise<void> = Promise.resolve();

  constructor(
    private readonly host: SheetHost,
    private readonly changed: () => void,
  ) {}

  async load(): Promise<void> {
    try {
      const found = await findPart(runsForm, (place) => this.host.readPart(place), new DOMParser());
      this.trouble = found ? "" : full;
      if (!found) return;
      this.place = found.place;
      this.unread = found.unread;
      this.runs = found.document ?? { earlier: [] };
      await this.takeCopy();
    } catch (error) {
      this.trouble = `The run kept in this workbook cannot be read right now. ${(error as Error).message}`;
    }
  }

  private async takeCopy(): Promise<void> {
    const copy = await this.copied();
    const run = copy?.runs.now;
    const own = this.runs.now;
    if (!copy || !run) return;
    if (own?.id === run.id) {
      if (run.revision > own.revision) this.set(copy.runs);
    } else if (!own && !this.runs.earlier.some(({ id }) => id === run.id)) {
      // The browser was closed before the workbook had the run.
      if (copy.workbook !== undefined && copy.workbook === this.host.workbook?.()) this.set({ ...this.runs, now: run });
      else this.stray = run;
    }
  }

  private async copied(): Promise<{ readonly runs: Runs; readonly workbook: string | undefined } | undefined> {
    try {
      const copy = await get<Copy>(copyName, copies());
      if (!copy || Date.now() - copy.touched > fresh) return undefined;
      const part = readPart(runsForm, copy.xml, runsForm.namespace, new DOMParser());
      return part.state === "read" ? { runs: part.document, workbook: copy.workbook } : undefined;
    } catch {
      return undefined;
    }
  }

  private async copy(): Promise<void> {
    try {
      const { runs } = this;
      if (!runs.now) return await del(copyName, copies());
      const xml = writePart(runsForm, runs, runsForm.namespace);
      await set(copyName, { xml, touched: Date.now(), workbook: this.host.workbook?.() } satisfies Copy, copies());
    } catch {
      // Without IndexedDB only the workbook keeps the run.
    }
  }

  dropStray(): void {
    this.stray = undefined;
    void this.copy();
  }

  setRun(now: Run | undefined): void {
    this.set({ ...this.runs, now });
  }

  /** The run is over, or put aside: it stays readable. */
  putAside(): void {
    const { now, earlier } = this.runs;
    if (now) this.set({ earlier: [now, ...earlier].slice(0, mostEarlier) });
  }

  set(runs: Runs): void {
    this.runs = runs;
    this.stray = undefined;
    this.save();
  }

  async again(): Promise<void> {
    if (this.place) this.save();
    else await this.load();
    this.changed();
  }

  private save(): void {
    void this.copy();
    if (!this.place) return;
    const xml = writePart(runsForm, this.runs, this.place);
    const { runs } = this;
    this.writing = Promise.all([this.writing, this.host.pause?.()]).then(async () => {
      if (runs !== this.runs) return;
      const ended = await this.host.writePart(this.place, xml);
      this.trouble = ended.done ? "" : ended.words;
      this.changed();
    });
  }
}
