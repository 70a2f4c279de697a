import { createStore, del, get, set, type UseStore } from "idb-keyval";
import type { Print } from "./print";

/** What is kept between visits: the workbook in the engine's own form. */
export interface Kept {
  readonly at: number;
  readonly book: object;
  /** Documents that belong to the workbook, by their namespace. */
  readonly parts?: Readonly<Record<string, string>>;
  /** How the sheets of a workbook from disk are printed, by the engine's names for them. */
  readonly print?: Readonly<Record<string, Print>>;
  /** The name of the file that it came from. */
  readonly name?: string;
}

/** How keeping stands, for a person to see. */
export type State = "kept" | "waiting" | "failed";

let store: UseStore | undefined;
const place = (): UseStore => {
  store ??= createStore("porewise", "work");
  return store;
};
const key = "book";

/** What was kept last time; a browser that keeps nothing is as good as a first visit. */
export async function kept(): Promise<Kept | undefined> {
  try {
    return await get<Kept>(key, place());
  } catch {
    return undefined;
  }
}

/** A workbook that would not open is kept apart, so that the next save does not write over it. */
export const putAside = (work: Kept): Promise<void> => set("book that did not open", work, place()).catch(() => {});

/** Puts a workbook in the place of the one that is kept. */
export const keep = (work: Kept): Promise<void> => set(key, work, place());

export const forget = (): Promise<void> => del(key, place());

const pause = 600;

/** Keeps the workbook soon after the last of a run of changes, and tells how that went. */
export class Keeper {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private stopped = false;

  constructor(
    private readonly take: () => Omit<Kept, "at">,
    private readonly tell: (state: State, at: number) => void,
  ) {}

  changed(): void {
    if (this.stopped) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.save(), pause);
    this.tell("waiting", Date.now());
  }

  /** Saves at once what still waits: the page may be about to go. */
  flush(): void {
    if (this.timer !== undefined) this.save();
  }

  /** Nothing is kept from here on: the work is about to be put aside. */
  stop(): void {
    this.stopped = true;
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  /** It was not put aside after all. */
  goOn(): void {
    this.stopped = false;
    this.changed();
  }

  private async save(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    const at = Date.now();
    try {
      await set(key, { at, ...this.take() } satisfies Kept, place());
      if (this.timer === undefined) this.tell("kept", at);
    } catch {
      this.tell("failed", at);
    }
  }
}
