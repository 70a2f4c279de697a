import * as checklist from "../../src/checklist/list";
import { type Item, type List, stages } from "../../src/checklist/schema";
import type { Editing } from "../listkeeping";

/** What the changing of items asks of the view that shows them. */
export interface Around {
  readonly list: () => List;
  readonly editing: () => Editing | undefined;
  readonly edit: (editing: Editing | undefined) => void;
  readonly change: (list: List, words: string) => void;
  readonly tell: (words: string, failed?: boolean) => void;
  readonly focusOn: (selector: string) => void;
}

/** One item at a time is typed anew or changed; what is half typed is never lost. */
export class ItemEditing {
  constructor(private readonly around: Around) {}

  private get list(): List {
    return this.around.list();
  }

  /** Keeps what is half typed before another form opens and says so, or clears the words said before. */
  private keepTyped(): void {
    const editing = this.around.editing();
    const before = this.list;
    const text = checklist.oneLine(editing?.words.text ?? "");
    if (editing && text) this.around.change(checklist.worded(before, editing.id, editing.words), `“${text}” is kept.`);
    if (this.list === before) this.around.tell("");
  }

  /** Opens the form with these words, for an item or for a new one. */
  open(id: string | undefined, words: checklist.Words): void {
    this.keepTyped();
    this.around.edit({ id, words });
    this.around.focusOn("#item-text");
  }

  /** The button that opened the form shuts it, and what was typed is kept. */
  shut(): void {
    const { id } = this.around.editing()!;
    this.keepTyped();
    this.around.edit(undefined);
    this.around.focusOn(`#change-${id}`);
  }

  finish = (words: checklist.Words): void => {
    const { id } = this.around.editing()!;
    if (!checklist.oneLine(words.text)) {
      this.around.tell("Type what to check.", true);
      this.around.focusOn("#item-text");
      return;
    }
    this.around.edit(undefined);
    const list = checklist.worded(this.list, id, words);
    this.around.tell("");
    this.around.change(list, id === undefined ? "The item is added." : "The item is changed.");
    this.around.focusOn(`#change-${id ?? list.items.at(-1)!.id}`);
  };

  cancel = (): void => {
    const { id, words } = this.around.editing()!;
    this.around.edit(undefined);
    this.around.tell("");
    this.around.focusOn(id === undefined ? `#add-${words.stage}` : `#change-${id}`);
  };

  remove(item: Item): void {
    const peers = checklist.inStage(this.list, item.stage);
    const at = peers.indexOf(item);
    const next = peers[at + 1] ?? peers[at - 1];
    this.around.edit(undefined);
    this.around.change(checklist.remove(this.list, item.id), `Removed: ${item.text}. Undo brings it back.`);
    this.around.focusOn(next ? `#change-${next.id}` : `#add-${item.stage}`);
  }

  /** Moves an item within the stage that its form shows; if that is another one, it goes there first. */
  move(item: Item, by: -1 | 1): void {
    const { stage } = this.around.editing()!.words;
    const there = stage === item.stage ? this.list : checklist.edit(this.list, item.id, { ...item, stage });
    const list = checklist.move(there, item.id, by);
    const peers = checklist.inStage(list, stage);
    const where = stage === item.stage ? "" : `, under ${stages[stage]}`;
    this.around.change(list, `Now number ${peers.findIndex(({ id }) => id === item.id) + 1} of ${peers.length}${where}.`);
    this.around.focusOn(by < 0 ? "#move-up" : "#move-down");
  }

  restore(id: string): void {
    this.around.edit(undefined);
    this.around.change(checklist.restore(this.list, id), "The item has its original wording again.");
    this.around.focusOn(`#change-${id}`);
  }

  /** The items of the stage that an open item's form shows. */
  peersOf(item: Item): Item[] {
    const { stage } = this.around.editing()!.words;
    const peers = checklist.inStage(this.list, stage);
    return stage === item.stage ? peers : [...peers, item];
  }
}
