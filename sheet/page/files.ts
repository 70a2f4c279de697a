import type { Ended } from "../../shared/host";
import { limits, Unreadable } from "../../shared/xlsx/unzip";
import { type Opened, opened } from "../file/open";
import type { Asker } from "./ask";
import { causeOf, costOf } from "./costs";
import { downloadWorkbook, fileName } from "./download";
import type { Library } from "./kept/library";
import type { Content } from "./kept/work";
import { engine } from "./vendor";

const few = (items: readonly string[]): string =>
  items.length > 8 ? `${items.slice(0, 8).join(", ")} and ${items.length - 8} more` : items.join(", ");

/** What a person should know before a workbook opens; "" where it opens whole. */
function warning({ unknown }: Opened): string {
  const words = [
    ...(unknown.length ? [`Formulas that are not known here show an error and are saved as they came: ${few(unknown)}.`] : []),
  ];
  return words.length ? [...words, "Your file on disk stays as it is."].join("\n\n") : "";
}

/** Reads a workbook file for the page, or says why not. */
export function readFile(bytes: Uint8Array, name: string): Opened | string {
  try {
    return opened(bytes, engine);
  } catch (error) {
    const reason = error instanceof Unreadable ? error.message : "something in it cannot be read here";
    return `${name} does not open: ${reason}.`;
  }
}

/** Lets the page draw, and a person press Stop. */
export const breath = (): Promise<unknown> => new Promise((done) => setTimeout(done, 20));

/** A file's workbook without what was said of the file. */
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

  /** Opens a file as a new workbook; asks first where the page cannot keep all of it. */
  async open(bytes: Uint8Array, name: string): Promise<Ended> {
    this.tell(`Opening ${name}`);
    await breath();
    const workbook = readFile(bytes, name);
    this.tell("");
    if (typeof workbook === "string") return { done: false, words: workbook };
    const words = warning(workbook);
    if (words && !(await this.asker.ask(`Open ${name}?`, words, "Open", "Leave it"))) return { done: true, words: "Nothing was opened." };
    const ended = await this.library.create(name.replace(/\.\w+$/, ""), contentOf(workbook));
    return ended.done ? { done: true, words: `${this.library.current.name} is open.` } : ended;
  }

  private async choose(file: File | undefined): Promise<void> {
    if (!file) return;
    const ended: Ended =
      file.size > limits.unpacked
        ? { done: false, words: `${file.name} does not open: it is larger than 100 MB.` }
        : await this.open(new Uint8Array(await file.arrayBuffer()), file.name);
    if (ended.done) this.tell(ended.words ?? "");
    else void this.asker.tell(ended.words);
  }

  private async save(): Promise<void> {
    const { id, name } = this.library.current;
    try {
      const content = await this.library.contentOf(id);
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
