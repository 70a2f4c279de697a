import type { SheetHost } from "../../shared/host";
import { recorded } from "../../src/run/progress";
import { changedSince, recordOf } from "../../src/run/record/record";
import type { Book, Writing } from "../../src/run/record/writing";
import type { Run } from "../../src/run/schema";
import type { RunKeeping } from "./runkeeping";

/** Places of the template that a run is written into, by their names. */
const names = { log: "RunLog", resin: "ResinRuns", costs: "CostLines", pieces: "RunPieces", spoiled: "RunSpoiled" } as const;

/** Writes a run into the workbook's sheets, and takes it back whole. */
export class Recorder {
  /** The record to be written, once it was asked for. */
  writing: Writing | undefined;
  words = "";
  failed = false;
  private busy = false;

  constructor(
    private readonly host: SheetHost,
    private readonly keeping: RunKeeping,
    private readonly changed: () => void,
  ) {}

  private say(words: string, failed = false): void {
    this.words = words;
    this.failed = failed;
    this.changed();
  }

  private async book(): Promise<Book> {
    const found = await Promise.all(Object.entries(names).map(async ([id, name]) => [id, await this.host.contents(name)] as const));
    return Object.fromEntries(found.filter(([, block]) => block)) as Book;
  }

  /** Shows what would be written as things stand. */
  look = async (run: Run): Promise<void> => {
    this.writing = recordOf(run, await this.book());
    this.say("");
  };

  leave = (): void => {
    this.writing = undefined;
    this.say("");
  };

  private async once(task: () => Promise<void>): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    try {
      await task();
    } finally {
      this.busy = false;
    }
  }

  write = (run: Run): Promise<void> =>
    this.once(async () => {
      // The sheets may have changed since the preview.
      const { blocks } = recordOf(run, await this.book());
      const ended = await this.host.put(blocks);
      if (!ended.done) return this.say(ended.words ?? "Nothing was written.", true);
      const now = await Promise.all(blocks.map(({ at }) => this.host.contents(at)));
      const odd = changedSince(blocks, now);
      const record = { at: Date.now(), after: blocks, before: ended.before ?? [], stands: true } as unknown as Run["record"];
      this.keeping.setRun(recorded(run, record));
      this.writing = undefined;
      if (odd.length) this.say(`Written, but these cells show something else: ${odd.join(", ")}. Look at them, or undo.`, true);
      else this.say("Written down.");
    });

  undo = (run: Run): Promise<void> =>
    this.once(async () => {
      const { record } = run;
      if (!record?.stands) return;
      const now = await Promise.all(record.after.map(({ at }) => this.host.contents(at)));
      const odd = changedSince(record.after, now);
      if (odd.length)
        return this.say(
          `Changed since, so nothing was undone: ${odd.join(", ")}. Put these cells back first, or clear the rows by hand.`,
          true,
        );
      const ended = await this.host.put(record.before);
      if (!ended.done) return this.say(ended.words, true);
      this.keeping.setRun(recorded(run, { ...record, stands: false }));
      this.say("Undone: the sheets are as they were.");
    });
}
