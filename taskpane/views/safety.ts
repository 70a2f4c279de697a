import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import { live } from "lit/directives/live.js";
import { repeat } from "lit/directives/repeat.js";
import { first } from "../../src/cautions";
import * as checklist from "../../src/checklist/list";
import { type Item, type List, type Stage, stageNames, stages } from "../../src/checklist/schema";
import { type Editing, Keeping } from "../keeping";
import { saveText } from "../save";
import { blankWords, wordsForm } from "./itemform";
import { View } from "./view";

const undoSteps = 50;

/** The safety list of a run: ticked, changed and kept inside the workbook. */
@customElement("pore-safety")
export class Safety extends View {
  @state() private ready = false;
  @state() private starting = false;
  @state() private who = "";
  private past: List[] = [];
  private keeping!: Keeping;

  private get list(): List {
    return this.keeping.list;
  }
  private get editing(): Editing | undefined {
    return this.keeping.editing;
  }

  override firstUpdated(): void {
    this.load();
    this.host.replaced?.((other) => {
      // What is half typed belongs to the workbook it was typed for.
      if (other) this.keeping.forget();
      this.load();
    });
  }

  private async load(): Promise<void> {
    this.past = [];
    this.keeping = new Keeping(this.host, () => this.requestUpdate());
    await this.keeping.load();
    this.who = this.list.last?.who ?? "";
    this.ready = true;
    this.requestUpdate();
  }

  private change(list: List, words: string): void {
    if (list === this.list) return;
    this.past = [...this.past, this.list].slice(-undoSteps);
    this.keeping.set(list);
    this.requestUpdate();
    if (words) this.tell(words);
  }

  private undo = (): void => {
    const last = this.past.pop();
    if (!last) return;
    this.keeping.set(last);
    this.requestUpdate();
    this.tell("The last step is undone.");
  };

  private edit(editing: Editing | undefined): void {
    this.keeping.edit(editing);
    this.requestUpdate();
  }

  private finish = (words: checklist.Words): void => {
    const { id } = this.editing!;
    if (!checklist.oneLine(words.text)) {
      this.tell("Type what is to be checked.", true);
      this.focusOn("#item-text");
      return;
    }
    this.edit(undefined);
    if (id === undefined) {
      const list = checklist.add(this.list, words);
      this.change(list, "The item is added.");
      this.focusOn(`#change-${list.items.at(-1)!.id}`);
    } else {
      this.change(checklist.edit(this.list, id, words), "The item is changed.");
      this.focusOn(`#change-${id}`);
    }
  };

  private cancel = (): void => {
    const { id, words } = this.editing!;
    this.edit(undefined);
    this.focusOn(id === undefined ? `#add-${words.stage}` : `#change-${id}`);
  };

  private removeItem = (item: Item): void => {
    const peers = checklist.inStage(this.list, item.stage);
    const at = peers.indexOf(item);
    const next = peers[at + 1] ?? peers[at - 1];
    this.edit(undefined);
    this.change(checklist.remove(this.list, item.id), `Removed: ${item.text}. Undo brings it back.`);
    this.focusOn(next ? `#change-${next.id}` : `#add-${item.stage}`);
  };

  private moveItem = (item: Item, by: -1 | 1): void => {
    const list = checklist.move(this.list, item.id, by);
    const peers = checklist.inStage(list, item.stage);
    this.change(list, `Now number ${peers.findIndex(({ id }) => id === item.id) + 1} of ${peers.length}.`);
    this.focusOn(by < 0 ? "#move-up" : "#move-down");
  };

  private startRun = (event: Event): void => {
    event.preventDefault();
    const now = new Date();
    const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
    this.starting = false;
    this.change(checklist.startRun(this.list, this.who, day), "The ticks are cleared, and the last run is kept below.");
    this.focusOn("#safety-start");
  };

  private print = async (): Promise<void> => {
    const heading = [
      ["", "Safety list", "Why"],
      ["", first, ""],
    ];
    this.tellEnd(
      await this.host.printSheet("Safety list", [...heading, ...checklist.rowsOf(this.list, stages)]),
      "The list stands on a sheet of its own.",
    );
  };

  private item(item: Item): TemplateResult {
    const { id, text, why, done } = item;
    const open = this.editing?.id === id;
    const toggle = (event: Event) => {
      const on = (event.target as HTMLInputElement).checked;
      this.change(checklist.tick(this.list, id, on), "");
    };
    return html`<li class="item" data-done=${done}>
      <fluent-checkbox id="tick-${id}" .checked=${live(done)} @change=${toggle}></fluent-checkbox>
      <label for="tick-${id}">${text}${why ? html`<span class="why">${why}</span>` : nothing}</label>
      <button class="plain" type="button" id="change-${id}" aria-expanded=${open} aria-label="Change: ${text}"
        @click=${() => (open ? this.cancel() : this.editItem(item))}>Change</button>
      ${open ? this.itemForm(item) : nothing}
    </li>`;
  }

  private editItem({ id, stage, text, why }: Item): void {
    this.edit({ id, words: { stage, text, why } });
    this.focusOn("#item-text");
  }

  private itemForm(item?: Item): TemplateResult {
    const peers = item ? checklist.inStage(this.list, item.stage) : [];
    const steps = item
      ? html`
        <fluent-button id="move-up" ?disabled-focusable=${peers[0] === item} @click=${() => this.moveItem(item, -1)}>Move up</fluent-button>
        <fluent-button id="move-down" ?disabled-focusable=${peers.at(-1) === item} @click=${() => this.moveItem(item, 1)}>Move down</fluent-button>
        ${
          checklist.isChanged(item)
            ? html`<fluent-button @click=${() => this.restoreItem(item.id)}>Restore its first words</fluent-button>`
            : nothing
        }
        <fluent-button @click=${() => this.removeItem(item)}>Remove</fluent-button>`
      : nothing;
    return wordsForm(this.editing!.words, {
      typed: (words) => this.edit({ id: this.editing!.id, words }),
      done: this.finish,
      cancel: this.cancel,
      steps,
    });
  }

  private restoreItem(id: string): void {
    this.edit(undefined);
    this.change(checklist.restore(this.list, id), "The item says again what it said at first.");
    this.focusOn(`#change-${id}`);
  }

  private stage(stage: Stage): TemplateResult {
    const items = checklist.inStage(this.list, stage);
    const done = items.filter((item) => item.done).length;
    const adding = this.editing && this.editing.id === undefined && this.editing.words.stage === stage;
    const add = () => {
      this.edit({ id: undefined, words: blankWords(stage) });
      this.focusOn("#item-text");
    };
    return html`<section class="stage" aria-labelledby="stage-${stage}">
      <h2 id="stage-${stage}">${stages[stage]} <span class="count">${done} of ${items.length}</span></h2>
      <ul class="items">${repeat(
        items,
        ({ id }) => id,
        (item) => this.item(item),
      )}</ul>
      ${
        adding
          ? this.itemForm()
          : html`<button class="plain" type="button" id="add-${stage}" @click=${add}>Add an item<span class="unseen"> to ${stages[stage]}</span></button>`
      }
    </section>`;
  }

  private unreadable(): TemplateResult | typeof nothing {
    const { unread } = this.keeping;
    if (!unread.length) return nothing;
    const newer = unread.some(({ state }) => state === "newer");
    const saveAside = () => {
      for (const [i, { xml }] of unread.entries()) saveText(`safety-list-${i + 1}.xml`, xml);
      this.tell("Saved among your downloads. The workbook keeps its own copy.");
    };
    return html`<div class="notice" role="note">
      <p><strong>${newer ? "This workbook holds a list from a newer Porewise." : "This workbook holds a list that is damaged."}</strong>
      It stays in the workbook untouched. Below is a fresh list, kept beside it.</p>
      <fluent-button id="save-aside" @click=${saveAside}>Save the old one aside</fluent-button>
    </div>`;
  }

  private lastRun(): TemplateResult | typeof nothing {
    const last = this.list.last;
    if (!last) return nothing;
    const words = last.open.length ? `${last.open.length} left unticked` : "everything was ticked";
    return html`<details class="last">
      <summary>Last run: ${last.when}${last.who ? `, ${last.who}` : ""}; ${words}</summary>
      <ul>${last.open.map((text) => html`<li>${text}</li>`)}</ul>
    </details>`;
  }

  private start(): TemplateResult {
    if (!this.starting) {
      const begin = () => {
        this.starting = true;
        this.focusOn("#safety-who");
      };
      return html`<fluent-button id="safety-start" appearance="primary" @click=${begin}>Start a new run</fluent-button>`;
    }
    const stop = () => {
      this.starting = false;
      this.focusOn("#safety-start");
    };
    return html`<form class="sheet" @submit=${this.startRun}>
      <p>The ticks are cleared. The day, the name and what is unticked now are kept as the last run.</p>
      <label for="safety-who">Who ran the last one</label>
      <input id="safety-who" autocomplete="off" maxlength="80" .value=${this.who} @input=${(e: Event) => (this.who = (e.target as HTMLInputElement).value)} />
      <div class="buttons">
        <fluent-button type="submit" appearance="primary">Clear the ticks</fluent-button>
        <fluent-button @click=${stop}>Not yet</fluent-button>
      </div>
    </form>`;
  }

  override render(): TemplateResult {
    if (!this.ready) return html`<p class="quiet">Looking for the list in this workbook.</p>`;
    const { items } = this.list;
    const { trouble } = this.keeping;
    const gone = checklist.removed(this.list);
    const restoreAll = () => this.change(checklist.restoreAll(this.list), "Every item is back as it came; your own stay.");
    return html`
      <p class="first">${first}</p>
      ${this.unreadable()}
      ${
        trouble
          ? html`<div class="notice failed" role="alert"><p><strong>Not kept.</strong> ${trouble}</p>
            <fluent-button @click=${() => this.keeping.again()}>Try again</fluent-button></div>`
          : nothing
      }
      <p class="tally"><strong>${items.filter(({ done }) => done).length}</strong> of ${items.length} ticked</p>
      ${this.start()}
      ${this.lastRun()}
      ${stageNames.map((stage) => this.stage(stage))}
      ${
        gone.length
          ? html`<details class="last"><summary>${gone.length === 1 ? "One item" : `${gone.length} items`} of the list removed</summary>
            <ul>${gone.map(
              ({ id, text }) => html`<li>${text}
              <button class="plain" type="button" aria-label="Put back: ${text}" @click=${() => this.restoreItem(id)}>Put back</button></li>`,
            )}</ul></details>`
          : nothing
      }
      <div class="buttons foot">
        <fluent-button id="undo" ?disabled-focusable=${!this.past.length} @click=${this.undo}>Undo</fluent-button>
        <fluent-button @click=${this.print}>Put it on a sheet</fluent-button>
        <fluent-button @click=${restoreAll}>Restore all</fluent-button>
      </div>`;
  }
}
