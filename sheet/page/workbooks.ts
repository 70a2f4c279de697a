import { html, render, type TemplateResult } from "lit";
import { repeat } from "lit/directives/repeat.js";
import type { Ended } from "../../shared/host";
import { saveFile } from "../../taskpane/save";
import type { Asker } from "./ask";
import { asideList, bookRow, when } from "./books";
import { bundle } from "./bundle";
import { costOf } from "./costs";
import { downloadWorkbook, fileName } from "./download";
import { contentOf, readFile } from "./files";
import { type Aside, aside, asides, removeAside, type Shelved, shelf } from "./kept/store";
import { days, recent } from "./kept/versions";
import type { Library } from "./library";
import { startContent, starts } from "./starts";

const size = (bytes: number): string => (bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(1)} GB`);

const noFile = (name: string) => `${name} was made before this page kept files, so there is no original.`;

/** The dialog over all workbooks that this browser keeps. */
export class Workbooks {
  private books: readonly Shelved[] = [];
  private aside: readonly Aside[] = [];
  private room = "";
  private said = "";
  private naming = "";

  constructor(
    private readonly dialog: HTMLDialogElement,
    private readonly library: Library,
    private readonly asker: Asker,
    /** Says beside the name of the workbook what was done. */
    private readonly tell: (words: string) => void,
  ) {}

  async open(): Promise<void> {
    this.said = "";
    await this.look();
    for (const details of this.dialog.querySelectorAll("details")) details.open = false;
    if (!this.dialog.open) this.dialog.showModal();
  }

  /** Reads the list anew; a browser that keeps nothing has none. */
  private async look(): Promise<void> {
    try {
      await this.library.flush();
      [this.books, this.aside] = await Promise.all([shelf(), asides()]);
      const { usage = 0, quota = 0 } = (await navigator.storage?.estimate?.()) ?? {};
      this.room = quota ? `They take up ${size(usage)}; the browser has room for ${size(quota)}.` : "";
    } catch {
      this.said ||= "This browser does not let this page keep anything. Save your work as a file.";
    }
    this.draw();
    if (this.dialog.open && !this.dialog.contains(document.activeElement)) this.dialog.querySelector<HTMLElement>("h2")?.focus();
  }

  /** Does one thing, says how it ended, and looks again. */
  private async does(task: () => Promise<Ended | undefined>, otherwise = ""): Promise<void> {
    try {
      const ended = await task();
      this.said = ended?.words ?? otherwise;
    } catch {
      this.said = "The browser could not do that. Your workbooks are as they were.";
    }
    await this.look();
  }

  /** Does one thing that leads back to the page; where it fails the list stays and says why. */
  private async leads(task: () => Promise<Ended>, words: string): Promise<void> {
    const ended = await task().catch(() => unreadable);
    if (!ended.done) return this.does(async () => ended);
    this.dialog.close();
    this.tell(words);
  }

  private make = (event: SubmitEvent): void => {
    event.preventDefault();
    const chosen = new FormData(event.target as HTMLFormElement).get("from");
    const from = starts.find(({ file }) => file === chosen)!;
    void this.does(async () => {
      const content = await startContent(from);
      return typeof content === "string" ? { done: false, words: content } : this.library.create(from.name, content);
    }, "It is open behind this list.");
  };

  private rename(event: SubmitEvent, id: string): void {
    event.preventDefault();
    const name = String(new FormData(event.target as HTMLFormElement).get("name"));
    void this.does(async () => {
      const ended = await this.library.rename(id, name);
      if (ended.done) this.naming = "";
      return ended;
    }, "Renamed.");
  }

  private copy({ id, name }: Shelved): Promise<void> {
    return this.does(async () => {
      const content = await this.library.contentOf(id);
      return content ? this.library.create(name, content) : unreadable;
    }, "The copy is open behind this list.");
  }

  private download(id: string, name: string, moment?: number): Promise<void> {
    return this.does(async () => {
      const content = moment === undefined ? await this.library.shapeOf(id) : undefined;
      const words = content && costOf(content);
      if (words && !(await this.asker.ask(`Download ${name}?`, words, "Download", "Cancel"))) return { done: true, words: "" };
      const file = await this.library.fileOf(id, moment);
      if (!file) return unreadable;
      downloadWorkbook(name, file);
      return { done: true, words: `Downloaded ${fileName(name)}.` };
    });
  }

  private original({ id, name }: Shelved): Promise<void> {
    return this.does(async () => {
      const content = await this.library.contentOf(id);
      if (!content?.file) return { done: false, words: noFile(name) };
      downloadWorkbook(`${name}, original`, content.file);
      return { done: true, words: `Downloaded ${fileName(`${name}, original`)}: the file as it was opened.` };
    });
  }

  private goBackToFile({ id, name }: Shelved): Promise<void> {
    return this.leads(async () => {
      const file = (await this.library.contentOf(id))?.file;
      if (!file) return { done: false, words: noFile(name) };
      const read = await readFile(file, name);
      return typeof read === "string" ? { done: false, words: read } : this.library.goBackTo(id, contentOf(read));
    }, "Back at the file as it was opened.");
  }

  private async remove({ id, name }: Shelved): Promise<void> {
    const words = `“${name}” and all its versions are deleted from this browser for good. Files on your disk stay.`;
    if (!(await this.asker.ask("Delete this workbook?", words, "Delete", "Cancel"))) return;
    await this.does(() => this.library.remove(id), `“${name}” is deleted.`);
    this.rest();
  }

  private goBack({ id }: Shelved, moment: number): Promise<void> {
    return this.leads(() => this.library.goBack(id, moment), `Back at ${when(moment)}.`);
  }

  private downloadAll = (): Promise<void> =>
    this.does(async () => {
      const { bytes, left } = await bundle(this.books, this.aside, (id) => this.library.fileOf(id));
      saveFile("porewise-workbooks.zip", bytes as BlobPart, "application/zip");
      const words = left.length ? `; not ${left.join(", ")}, which could not be read` : "";
      return { done: true, words: `Downloaded all of them as one zip file${words}.` };
    });

  private removeAll = async (): Promise<void> => {
    const words =
      "All workbooks, all their versions and what was set aside are deleted from this browser for good. Download them first if in doubt.";
    if (!(await this.asker.ask("Delete everything?", words, "Delete everything", "Cancel"))) return;
    await this.does(() => this.library.removeAll(), "Everything is deleted. A new workbook is open behind this list.");
  };

  private book(book: Shelved): TemplateResult {
    const { id, name } = book;
    return bookRow(book, this.library.current.id === id, this.naming === id, {
      open: () => this.leads(() => this.library.open(id), ""),
      name: () => this.name(id),
      rename: (event) => this.rename(event, id),
      leaveName: () => this.name(""),
      leaveNameByKey: this.leaveName,
      copy: () => this.copy(book),
      download: (moment) => this.download(id, moment === undefined ? name : `${name}, ${when(moment)}`, moment),
      original: () => this.original(book),
      remove: () => this.remove(book),
      goBack: (moment) => this.goBack(book, moment),
      goBackToFile: () => this.goBackToFile(book),
    });
  }

  /** Escape leaves the name, not the whole list. */
  private leaveName = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    this.name("");
    this.rest();
  };

  private name(id: string): void {
    this.naming = id;
    this.draw();
    this.dialog.querySelector<HTMLInputElement>(".naming input")?.select();
  }

  private async removeAside(one: Aside): Promise<void> {
    const words = `What was set aside of “${one.name}” is deleted for good. Download it first if in doubt.`;
    if (!(await this.asker.ask("Delete what was set aside?", words, "Delete", "Cancel"))) return;
    await this.does(async () => {
      await removeAside(one);
      return undefined;
    }, "It is deleted.");
    this.rest();
  }

  /** After something is gone no other row's button has the focus by accident. */
  private rest(): void {
    this.dialog.querySelector<HTMLElement>("h2")?.focus();
  }

  private downloadAside = (one: Aside): Promise<void> =>
    this.does(async () => {
      saveFile(fileName(one.name, "json"), JSON.stringify(await aside(one)), "application/json");
      return undefined;
    }, "Downloaded as the browser kept it.");

  private draw(): void {
    render(
      html`<h2 id="books-title" tabindex="-1">Workbooks</h2>
        <p>Your workbooks are kept in this browser, on this computer, and nowhere else: download what you cannot afford to lose.
          ${this.room} Each keeps its ${recent} newest versions, and older ones of the last ${recent} sessions and ${days} days.</p>
        <ul class="books">${repeat(
          this.books,
          ({ id }) => id,
          (book) => this.book(book),
        )}</ul>
        ${asideList(this.aside, { download: this.downloadAside, remove: (one) => this.removeAside(one) })}
        <form class="make" @submit=${this.make}>
          <label for="make-from">New workbook</label>
          <select id="make-from" name="from">
            ${starts.map(({ file, words }) => html`<option value=${file}>${words}</option>`)}
          </select>
          <button class="button button-firm" type="submit">Create</button>
        </form>
        <p class="said" role="status">${this.said}</p>
        <p class="dialog-buttons">
          <button class="button" type="button" @click=${this.downloadAll}>Download all</button>
          <button class="button" type="button" @click=${this.removeAll}>Delete everything</button>
          <button class="button button-firm" type="button" @click=${() => this.dialog.close()}>Close</button>
        </p>`,
      this.dialog,
    );
  }
}

const unreadable: Ended = { done: false, words: "It cannot be read. Nothing was changed." };
