/** How keeping stands, for a person to see; `stuck` is the engine's doing, `full` and `failed` the browser's. */
export type State = "kept" | "waiting" | "full" | "failed" | "stuck";

/** Thrown where the page's content could not be exported: the browser was not asked to keep it. */
export class Stuck extends Error {}

function stateOf(error: unknown): State {
  if (error instanceof Stuck) return "stuck";
  return (error as Error).name === "QuotaExceededError" ? "full" : "failed";
}

const shortest = 400;
const longest = 3_000;

/** Keeps the workbook soon after the last of a run of changes, and tells how that went. */
export class Keeper {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private saving: Promise<boolean> = Promise.resolve(true);
  private dirty = false;
  /** A large workbook blocks the page while it is exported, so it is kept less often. */
  private pause = shortest;

  constructor(
    private readonly save: (moment: number) => Promise<void>,
    private readonly tell: (state: State, moment: number, why?: string) => void,
    /** The last moment used as a key: moments must increase even if the clock is set back, or the newest version would not be found. */
    private last: number,
  ) {}

  changed(): void {
    this.dirty = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.flush(), this.pause);
    this.tell("waiting", Date.now());
  }

  /** Whether changes have not been kept yet. */
  get waits(): boolean {
    return this.dirty;
  }

  /** Keeps at once what still waits: the page may be about to go. Answers whether all is kept. */
  flush(): Promise<boolean> {
    clearTimeout(this.timer);
    this.saving = this.saving.then(() => (this.dirty ? this.write() : true));
    return this.saving;
  }

  private async write(): Promise<boolean> {
    const moment = Math.max(Date.now(), this.last + 1);
    this.dirty = false;
    const start = performance.now();
    try {
      await this.save(moment);
      this.pause = Math.min(longest, Math.max(shortest, performance.now() - start));
      this.last = moment;
      if (!this.dirty) this.tell("kept", moment);
      return true;
    } catch (error) {
      this.dirty = true;
      this.tell(stateOf(error), moment, (error as Error).message);
      return false;
    }
  }
}
