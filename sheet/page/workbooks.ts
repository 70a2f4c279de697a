import { html, render, type TemplateResult } from "lit";
import { repeat } from "lit/directives/repeat.js";
import type { Ended } from "../../shared/host";
import type { Asker } from "./ask";
import { BookActs, unreadable } from "./bookacts";
import { asideList, bookRow, when } from "./books";
import { type Aside, asides, removeAside, type Shelved, shelf } from "./kept/store";
import { days, recent } from "./kept/versions";
import type { Library } from "./library";
import { starts } from "./starts";

const size = (bytes: number): string => (bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(1)} GB`);

/** The dialog over all workbooks that this browser keeps. */
export class Workbooks {
  private books: readonly Shelved[] = [];
  private aside: readonly Aside[] = [];
  private room = "";
  private said = "";
  private naming = "";
  private readonly acts: BookActs;

  constructor(
    private readonly dialog: HTMLDialogElement,
    private readonly library: Library,
    private readonly asker: Asker,
    /** Says beside the name of the workbook what was done. */
    private readonly tell: (words: string) => void,
  ) {
    this.acts = new BookActs(library, asker);
  }

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

  /** Does one thing, says how it ended, and refreshes the list. */
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
    void this.does(() => this.acts.create(String(chosen)), "It is open behind this list.");
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

  private async remove({ id, name }: Shelved): Promise<void> {
    const words = `“${name}” and all its versions are deleted from this browser for good. Files on your disk stay.`;
    if (!(await this.asker.ask("Delete this workbook?", words, "Delete", "Cancel"))) return;
    await this.does(() => this.library.remove(id), `“${name}” is deleted.`);
    this.rest();
  }

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
      copy: () => this.does(() => this.acts.copy(book), "The copy is open behind this list."),
      download: (moment) => this.does(() => this.acts.download(id, moment === undefined ? name : `${name}, ${when(moment)}`, moment)),
      original: () => this.does(() => this.acts.original(book)),
      remove: () => this.remove(book),
      goBack: (moment) => this.leads(() => this.library.goBack(id, moment), `Back at ${when(moment)}.`),
      goBackToFile: () => this.leads(() => this.acts.goBackToFile(book), "Back at the file as it was opened."),
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

  /** After a deletion the focus must not land on another row's button. */
  private rest(): void {
    this.dialog.querySelector<HTMLElement>("h2")?.focus();
  }

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
        ${asideList(this.aside, { download: (one) => this.does(() => this.acts.downloadAside(one)), remove: (one) => this.removeAside(one) })}
        <form class="make" @submit=${this.make}>
          <label for="make-from">New workbook</label>
          <select id="make-from" name="from">
            ${starts.map(({ file, words }) => html`<option value=${file}>${words}</option>`)}
          </select>
          <button class="button button-firm" type="submit">Create</button>
        </form>
        <p class="said" role="status">${this.said}</p>
        <p class="dialog-buttons">
          <button class="button" type="button" @click=${() => this.does(() => this.acts.downloadAll(this.books, this.aside))}>Download all</button>
          <button class="button" type="button" @click=${this.removeAll}>Delete everything</button>
          <button class="button button-firm" type="button" @click=${() => this.dialog.close()}>Close</button>
        </p>`,
      this.dialog,
    );
  }
}
