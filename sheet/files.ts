import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import type { Ended } from "../shared/host";
import { type Opened, opened } from "./open";
import { type Beside, saved } from "./save";
import { type Kept, keep } from "./store";
import { limits, Unreadable } from "./unzip";

declare const o_spreadsheet: typeof OSpreadsheet;

const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const noRoom = "This browser keeps nothing for this page, so no workbook can take the place of this one. Allow the page to keep data.";

/** What files need of the page. */
export interface Around {
  readonly model: Model;
  readonly beside: () => Beside;
  readonly name: string;
  readonly ask: (title: string, words: string, yes: string, no: string) => Promise<boolean>;
  readonly tell: (words: string) => void;
  /** What is on the page now is about to give way: nothing of it is kept from here on. */
  readonly leave: () => void;
  /** It stays after all. */
  readonly stay: () => void;
}

const few = (items: readonly string[]): string =>
  items.length > 8 ? `${items.slice(0, 8).join(", ")} and ${items.length - 8} more` : items.join(", ");

/** What a person should know before a workbook opens. */
function warning({ lost, unknown }: Opened): string {
  return [
    "It takes the place of what is on the page now: save that first if you want it again. Your file on disk stays as it is.",
    ...(lost.length ? [`This page does not keep: ${lost.join("; ")}.`] : []),
    ...(unknown.length ? [`Formulas that are not known here show an error and are saved as they came: ${few(unknown)}.`] : []),
  ].join("\n\n");
}

/** Opens workbooks from disk, and saves the one on the page. */
export class Files {
  constructor(private readonly around: Around) {}

  /** Reads a workbook, asks whether to go on, and puts it in place of the one on the page. */
  async open(bytes: Uint8Array, name: string): Promise<Ended> {
    const { ask, leave, stay } = this.around;
    let workbook: Opened;
    try {
      workbook = opened(bytes, o_spreadsheet);
      // One that the engine cannot take must not cost the work on the page.
      new o_spreadsheet.Model(workbook.book);
    } catch (error) {
      const reason = error instanceof Unreadable ? error.message : "something in it cannot be read here";
      return { done: false, words: `${name} does not open: ${reason}.` };
    }
    if (!(await ask(`Open ${name}?`, warning(workbook), "Open", "Keep my work"))) return { done: false, words: "Nothing was opened." };
    const { book, documents, print } = workbook;
    const kept: Kept = { at: Date.now(), book, parts: documents, print, name };
    try {
      leave();
      await keep(kept);
    } catch {
      stay();
      return { done: false, words: noRoom };
    }
    location.reload();
    return { done: true };
  }

  async choose(file: File | undefined): Promise<void> {
    if (!file) return;
    const ended =
      file.size > limits.unpacked
        ? { done: false, words: `${file.name} does not open: it is larger than 100 MB.` }
        : await this.open(new Uint8Array(await file.arrayBuffer()), file.name);
    if (!ended.done && ended.words !== "Nothing was opened.") void this.around.ask("Please note", ended.words ?? "", "Understood", "");
  }

  async save(): Promise<void> {
    const { model, beside, name, ask, tell } = this.around;
    try {
      const bytes = await saved(model, beside(), o_spreadsheet);
      const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type }));
      Object.assign(document.createElement("a"), { href: url, download: name }).click();
      // The browser reads the address after this turn.
      setTimeout(() => URL.revokeObjectURL(url), 60_000);
      tell(`${name} is in your downloads`);
    } catch {
      void ask("Please note", "The workbook could not be written as a file. Your work is still on the page.", "Understood", "");
    }
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
