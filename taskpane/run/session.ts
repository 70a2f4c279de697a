import type { SheetHost } from "../../shared/host";
import type { Run } from "../../src/run/schema";
import { Keeping } from "../listkeeping";
import { Past } from "../past";
import { type Sources, sourcesOf } from "../sources";
import { Recorder } from "./recorder";
import { RunKeeping } from "./runkeeping";

/** The run of one workbook with everything that it needs: the kept runs, the record, the safety list, and Undo. */
export class Session {
  readonly keeping: RunKeeping;
  readonly recorder: Recorder;
  readonly safety: Keeping;
  sources: Sources | undefined;
  private readonly deaf: () => void;

  constructor(
    private readonly host: SheetHost,
    private readonly changed: () => void,
    private readonly past = new Past<Run>(),
  ) {
    this.keeping = new RunKeeping(host, changed);
    this.recorder = new Recorder(host, this.keeping, changed);
    this.safety = Keeping.of(host);
    this.deaf = this.safety.listen(changed);
  }

  get run(): Run | undefined {
    return this.keeping.runs.now;
  }

  get mayUndo(): boolean {
    return !this.past.isEmpty;
  }

  async load(): Promise<void> {
    await Promise.all([this.keeping.load(), this.safety.load()]);
    await this.look();
  }

  /** Reads anew what a run is chosen from. */
  async look(): Promise<void> {
    this.sources = await sourcesOf(this.host, -new Date().getTimezoneOffset());
  }

  /** A new session for the workbook that the host has now; in another workbook there is nothing to undo. */
  renewed(other: boolean): Session {
    this.deaf();
    const session = new Session(this.host, this.changed, other ? undefined : this.past);
    session.sources = this.sources;
    return session;
  }

  end(): void {
    this.deaf();
  }

  begin(run: Run): void {
    this.past.clear();
    this.keeping.setRun(run);
  }

  change(run: Run): void {
    if (this.run) this.past.add(this.run);
    this.keeping.setRun(run);
    this.changed();
  }

  /** Whether there was something to undo. */
  undo(): boolean {
    const last = this.run && this.past.back();
    if (!last) return false;
    this.keeping.setRun({ ...last, revision: this.run!.revision + 1 });
    this.changed();
    return true;
  }

  putAside(): void {
    this.keeping.putAside();
    this.past.clear();
    this.changed();
  }

  /** Takes up the run that this browser has and the workbook does not; or lets it go. */
  settleStray(take: boolean): void {
    if (take) this.keeping.setRun(this.keeping.stray);
    else this.keeping.dropStray();
    this.changed();
  }
}
