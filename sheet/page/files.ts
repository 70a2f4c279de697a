import type { Ended } from "../../shared/host";
import { limits, Unreadable } from "../../shared/xlsx/unzip";
import { type Opened, opened } from "../file/open";
import type { Asker } from "./ask";
import { downloadWorkbook, fileName } from "./download";
import type { Content } from "./kept/work";
import type { Library } from "./library";
import { prepareReader, type Reading, readBeside } from "./reader/reading";
import { causeOf, costOf } from "./savelosses";
import { engine } from "./vendor";

const few = (items: readonly string[]): string =>
  items.length > 8 ? `${items.slice(0, 8).join(", ")} and ${items.length - 8} more` : items.join(", ");

/** What a person should know before a workbook opens; "" where it opens whole. */
function warning({ unknown }: Opened): string {
  const words = [
    ...(unknown.length ? [`Formulas that this page does not know show an error and are saved unchanged: ${few(unknown)}.`] : []),
  ];
  return words.length ? [...words, "Your file on disk is not changed."].join("\n\n") : "";
}

/** Reads on the main thread: where no worker can be started. */
function readHere(bytes: Uint8Array): Opened | string {
  try {
    return opened(bytes, engine);
  } catch (error) {
    return error instanceof Unreadable ? error.message : "something in it cannot be read here";
  }
}

/** Reads a workbook file for the page, or says why not. */
export async function readFile(bytes: Uint8Array, name: string, reading: Reading = {}): Promise<Opened | string> {
  const told = bytes.length > limits.unpacked ? "it is larger than 100 MB" : ((await readBeside(bytes, reading)) ?? readHere(bytes));
  return typeof told === "string" ? `${name} does not open: ${told}.` : told;
}

/** Lets the page draw, and a person press Stop. */
export const breath = (): Promise<unknown> => new Promise((done) => setTimeout(done, 20));

/** The content to keep of a file that was read. */
export const contentOf = ({ lost: _, unknown: __, ...content }: Opened): Content => content;

/** Says for a while what was done, and offers what may come next. */
export type Tell = (words: string, next?: { readonly words: string; readonly act: () => void }) => void;

/** Opens workbooks from disk, each beside those that are there, and saves the one on the page. */
export class Files {
  constructor(
    private readonly library: Library,
    private readonly asker: Asker,
    private readonly tell: Tell,
    /** What people without the add-in may be given in place of a file with our formulas; undefined where it holds none. */
    private readonly copy: () => (() => Promise<Ended>) | undefined = () => undefined,
  ) {}

  /** Opens a file as a new workbook; asks first where the page cannot keep all of it. What is open stays until the new one stands. */
  async open(bytes: Uint8Array, name: string): Promise<Ended> {
    const workbook = await this.read(bytes, name);
    if (typeof workbook === "string") return { done: false, words: workbook };
    const words = warning(workbook);
    if (words && !(await this.asker.ask(`Open ${name}?`, words, "Open", "Cancel"))) return { done: true, words: "Nothing was opened." };
    this.tell(`Opening ${name}`);
    await breath();
    const ended = await this.library.create(name.replace(/\.\w+$/, ""), contentOf(workbook));
    this.tell("");
    return ended.done ? { done: true, words: `${this.library.current.name} is open.` } : ended;
  }

  /** Reads a file with a progress message and a Stop button. */
  private async read(bytes: Uint8Array, name: string): Promise<Opened | string> {
    const stopping = new AbortController();
    const stop = { words: "Stop", act: () => stopping.abort() };
    this.tell(`Opening ${name}`, stop);
    const read = await readFile(bytes, name, {
      stop: stopping.signal,
      progress: (share) => this.tell(`Opening ${name}: ${Math.round(share * 100)} %`, stop),
    });
    this.tell("");
    return read;
  }

  private async choose(file: File | undefined): Promise<void> {
    if (!file) return;
    const ended = await this.opens(file);
    if (ended.done) this.tell(ended.words ?? "");
    else void this.asker.tell(ended.words);
  }

  /** Whatever goes wrong, the page stays as it was and says so. */
  private async opens(file: File): Promise<Ended> {
    try {
      if (file.size > limits.unpacked) return { done: false, words: `${file.name} does not open: it is larger than 100 MB.` };
      return await this.open(new Uint8Array(await file.arrayBuffer()), file.name);
    } catch (error) {
      const words = `${file.name} does not open: ${(error as Error).message}. The workbook before is still on the page.`;
      return { done: false, words };
    }
  }

  private async save(): Promise<void> {
    const { id, name } = this.library.current;
    try {
      const content = await this.library.shapeOf(id);
      const words = content && costOf(content);
      if (words && !(await this.asker.ask(`Save ${name}?`, words, "Save", "Cancel"))) return;
      downloadWorkbook(name, (await this.library.fileOf(id))!);
      const copy = this.copy();
      if (!copy) return this.tell(`Downloaded ${fileName(name)}`);
      this.tell(`Downloaded ${fileName(name)}. It needs the add-in to calculate.`, {
        words: "Copy for people without it",
        act: () => void this.give(copy),
      });
    } catch (error) {
      void this.asker.tell(`${fileName(name)} was not saved: ${causeOf(error)}. Your work is still on the page.`);
    }
  }

  private async give(copy: () => Promise<Ended>): Promise<void> {
    this.tell("Making the copy");
    const ended = await copy();
    if (ended.done) this.tell(ended.words ?? "");
    else void this.asker.tell(ended.words);
  }

  /** The buttons, and the whole page as a place to drop a file on. */
  listen(open: HTMLElement, input: HTMLInputElement, save: HTMLElement): void {
    // Starts the worker early, when the pointer comes near the button: loading the engine takes longer than reading a small file.
    for (const near of ["pointerenter", "focus", "click"]) open.addEventListener(near, () => prepareReader());
    open.addEventListener("click", () => input.click());
    input.addEventListener("change", () => {
      void this.choose(input.files?.[0]);
      input.value = "";
    });
    save.addEventListener("click", () => void this.save());
    const holdsFile = ({ dataTransfer }: DragEvent) => dataTransfer?.types.includes("Files") ?? false;
    const over = (event: DragEvent, isOver: boolean) => {
      if (!holdsFile(event)) return;
      event.preventDefault();
      prepareReader();
      document.body.toggleAttribute("data-drop", isOver);
    };
    addEventListener("dragover", (event) => over(event, true));
    addEventListener("dragleave", (event) => event.relatedTarget === null && over(event, false));
    addEventListener("drop", (event) => {
      over(event, false);
      if (holdsFile(event)) void this.choose(event.dataTransfer?.files[0]);
    });
  }
}
