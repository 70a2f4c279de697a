import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import { repeat } from "lit/directives/repeat.js";
import { first } from "../../src/cautions";
import * as checklist from "../../src/checklist/list";
import { printedRows } from "../../src/checklist/printed";
import { type Item, type List, type Now, noRun, type Stage, stageNames, stages } from "../../src/checklist/schema";
import { type Editing, Keeping } from "../listkeeping";
import { Past } from "../past";
import { today } from "../today";
import { itemRow, itemSteps, removedItems } from "./item";
import { ItemEditing } from "./itemediting";
import { blankWords, wordsForm } from "./itemform";
import { earlierRuns, runForm, thisRun } from "./run";
import { saveUnread, troubleNotice, unreadNotice } from "./unread";
import { View } from "./view";

/** The safety list of a run: ticked, changed and kept inside the workbook. */
@customElement("pore-safety")
export class Safety extends View {
  @state() private ready = false;
  private readonly past = new Past<List>();
  private keeping!: Keeping;
  private deaf: (() => void) | undefined;
  private isOwn = false;
  /** The list as it was last shown. */
  private known: List | undefined;

  private get list(): List {
    return this.keeping.list;
  }
  private get editing(): Editing | undefined {
    return this.keeping.editing;
  }

  override firstUpdated(): void {
    this.load();
    this.host.watch(() => {
      if (this.offsetParent) void this.keeping.follow();
    });
    this.host.replaced?.((other) => {
      // Half-typed words belong to the workbook that they were typed for.
      if (other) this.keeping.forget();
      this.load();
    });
  }

  private async load(): Promise<void> {
    this.past.clear();
    this.keeping = Keeping.of(this.host);
    this.deaf?.();
    this.deaf = this.keeping.listen(() => {
      // Check marks made in the run view are not undone here.
      if (!this.isOwn && this.list !== this.known) this.past.clear();
      this.known = this.list;
      this.requestUpdate();
    });
    await this.keeping.load();
    this.ready = true;
    this.requestUpdate();
  }

  private change(list: List, words: string): void {
    if (list === this.list) return;
    this.past.add(this.list);
    this.set(list);
    if (words) this.tell(words);
  }

  private set(list: List): void {
    this.isOwn = true;
    this.keeping.set(list);
    this.isOwn = false;
  }

  private undo = (): void => {
    const last = this.past.back();
    if (!last) return;
    this.set(last);
    this.tell("The last step is undone.");
  };

  private edit(editing: Editing | undefined): void {
    this.keeping.edit(editing);
    this.requestUpdate();
  }

  private readonly items = new ItemEditing({
    list: () => this.list,
    editing: () => this.editing,
    edit: (editing) => this.edit(editing),
    change: (list, words) => this.change(list, words),
    tell: (words, failed) => this.tell(words, failed),
    focusOn: (selector) => void this.focusOn(selector),
  });

  private startRun = (event: Event): void => {
    event.preventDefault();
    const now = this.keeping.asked ?? noRun;
    this.keeping.asked = undefined;
    this.change(checklist.startRun(this.list, { ...now, when: now.when || today() }), "The check marks are cleared for the new run.");
    this.focusOn("#safety-start");
  };

  private print = async (): Promise<void> => {
    this.tellEnd(await this.host.printSheet("Safety list", printedRows(this.list)), "The list is on its own sheet.");
  };

  private itemForm(steps?: TemplateResult): TemplateResult {
    const { id, words } = this.editing!;
    const leave = id === undefined ? "Do not add it" : "Leave as it was";
    return wordsForm(words, {
      typed: (changed) => this.edit({ id, words: changed }),
      done: this.items.finish,
      cancel: this.items.cancel,
      leave,
      steps,
    });
  }

  private item(item: Item): TemplateResult {
    const { id } = item;
    const open = this.editing?.id === id;
    const acts = {
      tick: (on: boolean) => this.change(checklist.tick(this.list, id, on), ""),
      change: () => (open ? this.items.shut() : this.items.open(id, { stage: item.stage, text: item.text, why: item.why })),
      move: (by: -1 | 1) => this.items.move(item, by),
      restore: () => this.items.restore(id),
      remove: () => this.items.remove(item),
    };
    return itemRow(item, acts, open && this.itemForm(itemSteps(item, this.items.peersOf(item), acts)));
  }

  private putBack(id: string): void {
    this.change(checklist.restore(this.list, id), "It is back on the list.");
    this.focusOn(`#change-${id}`);
  }

  private restoreAll = (): void => {
    const list = checklist.restoreAll(this.list);
    if (JSON.stringify(list) === JSON.stringify(this.list)) this.tell("Nothing to restore: the list is the original one.");
    else this.change(list, "Every original item is back; your own items stay.");
  };

  private stage(stage: Stage): TemplateResult {
    const items = checklist.inStage(this.list, stage);
    const done = items.filter((item) => item.done).length;
    const adding = this.editing && this.editing.id === undefined && this.editing.words.stage === stage;
    const add = () => this.items.open(undefined, blankWords(stage));
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

  private ask = (): void => {
    this.type({ ...this.list.now, when: today() });
    this.tell("");
    this.focusOn("#safety-who");
  };

  private notYet = (): void => {
    this.type(undefined);
    this.tell("");
    this.focusOn("#safety-start");
  };

  private type = (now: Now | undefined): void => {
    this.keeping.start(now);
    this.requestUpdate();
  };

  override render(): TemplateResult {
    if (!this.ready) return html`<p class="quiet">Reading the list in this workbook.</p>`;
    const { items } = this.list;
    const { unread, trouble, asked } = this.keeping;
    return html`
      <p class="first">${first}</p>
      ${unreadNotice(unread, () => saveUnread(unread, this.host, (words, failed) => this.tell(words, failed)))}
      ${troubleNotice(trouble, () => this.keeping.again())}
      <p class="tally"><strong>${items.filter(({ done }) => done).length}</strong> of ${items.length} checked</p>
      ${
        asked !== undefined
          ? runForm(asked, { typed: this.type, start: this.startRun, leave: this.notYet })
          : html`<fluent-button id="safety-start" appearance="primary" @click=${this.ask}>Start a new run</fluent-button>`
      }
      ${thisRun(this.list.now)}
      ${earlierRuns(this.list.runs)}
      ${stageNames.map((stage) => this.stage(stage))}
      ${removedItems(checklist.removed(this.list), (id) => this.putBack(id))}
      <div class="buttons foot">
        <fluent-button id="undo" ?disabled-focusable=${this.past.isEmpty} @click=${this.undo}>Undo</fluent-button>
        ${this.keeping.isOnSheet ? html`<span class="quiet">Prints from the sheet Safety.</span>` : html`<fluent-button @click=${this.print}>Put it on a sheet</fluent-button>`}
        <fluent-button @click=${this.restoreAll}>Restore all</fluent-button>
      </div>
      ${this.host.endsUndo ? html`<p class="hint">Your check marks go into this workbook when you pause. Excel's own Undo does not reach back past that.</p>` : nothing}`;
  }
}
