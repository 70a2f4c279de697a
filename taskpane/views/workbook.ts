import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import { live } from "lit/directives/live.js";
import type { Ended, Work } from "../../shared/host";
import { type Choice, nameOf } from "../../src/workbook/choice";
import "./labels";
import { draftOf, keepDraft } from "../draft";
import { type Book, fetchBook } from "../files";
import { saveFile, workbookType } from "../save";
import { type Running, run } from "../work";
import { choices } from "./choices";
import { View } from "./view";

const draftName = "workbook";
const first: Choice = { edition: "live", units: "us", empty: false };

/** The workbook at one press, and what a workbook with PORE formulas may need. */
@customElement("pore-workbook")
export class Workbook extends View {
  @state() private choice: Choice = draftOf(draftName, (kept) => ({ ...first, ...(kept as Choice) })) ?? first;
  @state() private book: Book | undefined;
  @state() private looking = true;
  @state() private left: ReadonlySet<string> = new Set();
  @state() private running: Running | undefined;
  @state() private opens: boolean | undefined;

  override firstUpdated(): void {
    this.look();
    this.host.opensWithWorkbook?.get().then((on) => {
      this.opens = on;
    });
  }

  private async look(): Promise<void> {
    const { choice } = this;
    this.looking = true;
    const book = await fetchBook(choice);
    if (choice !== this.choice) return;
    this.book = book;
    this.looking = false;
  }

  private choose(part: Partial<Choice>): void {
    this.choice = { ...this.choice, ...part };
    keepDraft(draftName, this.choice);
    this.look();
  }

  private async work(task: (work: Work) => Promise<Ended>, otherwise: string): Promise<void> {
    if (this.running) {
      this.tell("Still working: wait, or press Stop.", true);
      return;
    }
    const ended = await run((running) => {
      this.running = running;
    }, task);
    this.tellEnd(ended, otherwise);
  }

  private get sheets(): string[] {
    return this.book?.sheets.filter((name) => !this.left.has(name)) ?? [];
  }

  private insert = (): void => {
    if (!this.sheets.length) this.tell("Check at least one sheet.", true);
    else this.work((work) => this.host.insert(this.book!.data, this.sheets, work), "Sheets added at the end of this workbook.");
  };

  private open = (): void => {
    this.work(() => this.host.open(this.book!.data, this.book!.name), "Opened as a new workbook.");
  };

  private download = (): void => {
    saveFile(this.book!.name, this.book!.data as BlobPart, workbookType);
    this.tell(`Look for ${this.book!.name} in your downloads.`);
  };

  private toggle(name: string, on: boolean): void {
    const left = new Set(this.left);
    if (on) left.delete(name);
    else left.add(name);
    this.left = left;
  }

  private sheetList(): TemplateResult {
    if (this.looking) return html`<p class="quiet">Loading the file.</p>`;
    if (!this.book)
      return html`<div class="notice" role="note"><p>The file ${nameOf(this.choice)} is missing or cannot be reached right now. Try another choice, or come back when
        you are connected.</p><fluent-button @click=${() => this.look()}>Look again</fluent-button></div>`;
    return html`<fieldset class="choices">
      <legend>Sheets</legend>
      ${this.book.sheets.map(
        (name, i) => html`<div class="tick"><fluent-checkbox id="sheet-${i}" .checked=${live(!this.left.has(name))}
          @change=${(event: Event) => this.toggle(name, (event.target as HTMLInputElement).checked)}></fluent-checkbox><label for="sheet-${i}">${name}</label></div>`,
      )}
      <p class="hint">Each sheet brings the sheets it needs.</p>
    </fieldset>
    <div class="buttons">
      <fluent-button id="insert" appearance="primary" @click=${this.insert}>Insert into this workbook</fluent-button>
      <fluent-button id="open" @click=${this.open}>Open as a new workbook</fluent-button>
      ${this.host.savesFiles === false ? nothing : html`<fluent-button id="download" @click=${this.download}>Download</fluent-button>`}
    </div>
    <p class="hint">Nothing of yours is replaced: if a sheet name is taken, the new sheet gets a number.${this.host.endsUndo ? " Inserting sheets clears Excel's Undo." : ""}</p>
    ${this.host.savesFiles === false ? html`<p class="hint">To get the file itself, open it as a new workbook and save that.</p>` : nothing}`;
  }

  private progress(): TemplateResult | typeof nothing {
    if (!this.running?.visible) return nothing;
    const share = Math.round(this.running.share * 100);
    return html`<div class="notice working" role="note"><p id="progress-words">Working: ${share} %</p>
      <fluent-progress-bar role="progressbar" aria-labelledby="progress-words" aria-valuenow=${share} value=${share} max="100" thickness="large"></fluent-progress-bar>
      <fluent-button id="stop" @click=${this.running.stop}>Stop</fluent-button></div>`;
  }

  private again(where: "selection" | "workbook"): void {
    this.work((work) => this.host.reenter(where, work), "Formulas entered again.");
  }

  private setOpens = async (event: Event): Promise<void> => {
    const on = (event.target as HTMLInputElement).checked;
    const done = this.tellEnd(
      await this.host.opensWithWorkbook!.set(on),
      on ? "The pane opens with this workbook." : "The pane will not open by itself.",
    );
    this.opens = done ? on : !on;
    // After a refusal the state is unchanged, so the checkbox must be set back by hand.
    this.requestUpdate();
  };

  override render(): TemplateResult {
    return html`
      <h2>A workbook to start from</h2>
      ${choices(this.choice, (part) => this.choose(part))}${this.sheetList()}${this.progress()}
      <h2>Formulas that show #NAME?</h2>
      <p>A file from elsewhere may show #NAME? instead of numbers. Entering its PORE formulas again fixes that.</p>
      <div class="buttons">
        <fluent-button id="again-selection" @click=${() => this.again("selection")}>In selected cells</fluent-button>
        <fluent-button id="again-workbook" @click=${() => this.again("workbook")}>In the whole workbook</fluent-button>
      </div>
      <h2>For people without the add-in</h2>
      <p>A copy of this workbook for any spreadsheet program. Whatever plain formulas can work out keeps calculating, with a table of bake
        minutes by thickness; the rest is today's numbers.</p>
      <fluent-button id="values" @click=${() => this.work((work) => this.host.copyWithValues(work), "The copy is ready.")}>Make the copy</fluent-button>
      <h2>Labels</h2>
      <pore-labels .host=${this.host}></pore-labels>
      ${
        this.opens === undefined
          ? nothing
          : html`<h2>This pane</h2>
          <div class="tick"><fluent-checkbox id="opens" .checked=${live(this.opens)} @change=${this.setOpens}></fluent-checkbox>
          <label for="opens">Open this pane with this workbook</label></div>
          <p class="hint">People without Porewise then see an error from Excel about a missing add-in each time they open it: give them a copy with values.</p>`
      }`;
  }
}
