import type { Model, WorkbookData } from "@odoo/o-spreadsheet";
import { Unreadable } from "../../shared/xlsx/unzip";
import { bookOf, type Fault } from "../book";
import { type Beside, saved, shapeOf } from "../file/save";
import { Announcements } from "./announcements";
import { placeCursor } from "./cursor";
import { dateAxis } from "./dateaxis";
import { fitFrozen } from "./frozen";
import { type Asks, mount, onEntry, open, type View } from "./grid";
import { calculateWhenIdle } from "./idle";
import type { Content } from "./kept/work";
import { Mirror, type Places } from "./mirror";
import { engine } from "./vendor";

/** The focused element, within the pane's frame too: a frame that loses the focus forgets its element. */
function focusedIn({ activeElement }: Document): HTMLElement | null {
  const inside = activeElement instanceof HTMLIFrameElement ? activeElement.contentDocument : null;
  return inside ? focusedIn(inside) : (activeElement as HTMLElement | null);
}

/** The workbook on the page: one at a time, drawn by the engine, with what the engine does not hold beside it. */
export class Desk {
  private now: { readonly model: Model; readonly mirror: Mirror; readonly view: View } | undefined;
  private beside: Beside = { documents: {}, print: {} };
  private readonly watchers = new Set<() => void>();
  private readonly guests = new Set<(other: boolean) => void>();
  private id = "";
  /** How often the engine's view of this workbook crashed. */
  private ends = 0;
  private settled = false;
  readOnly = false;

  constructor(
    private readonly places: Places,
    private readonly asks: Asks,
    private readonly changed: () => void,
  ) {}

  get model(): Model {
    if (!this.now) throw new Error("No workbook is open yet.");
    return this.now.model;
  }

  /**
   * Puts a workbook in the place of the one that is shown, which stays until this one stands: where it does not open this throws.
   * Answers whether some formulas were left out because they take too long; a strict one is not shown then.
   */
  async show(id: string, content: Content, readOnly: boolean, strict = false): Promise<{ readonly over: boolean }> {
    const { book, shown, ...beside } = content;
    const { model, over } = open(book, { readOnly, all: strict }, () => this.changed());
    if (over && strict) throw new Unreadable("its formulas take longer than 20 seconds, or fill more than five million cells");
    const sheetIdFrom = model.getters.getActiveSheetId();
    if (shown) model.dispatch("ACTIVATE_SHEET", { sheetIdFrom, sheetIdTo: shown });
    dateAxis(model);
    const announcements = new Announcements(model);
    onEntry(model, (at) => announcements.before(at));
    // A newly mounted grid takes the focus.
    const focused = focusedIn(document);
    const view = await mount(model, this.places.grid, this.asks, () => this.ended(model));
    this.close();
    view.show();
    const other = id !== this.id;
    if (other) this.ends = 0;
    [this.id, this.beside, this.readOnly] = [id, beside, readOnly];
    const mirror = new Mirror(model, this.places, announcements);
    const makeRoom = fitFrozen(model);
    const toFirst = placeCursor(model, book);
    this.now = { model, mirror, view };
    model.on("update", mirror, () => {
      makeRoom();
      toFirst();
      mirror.refresh();
      for (const watcher of this.watchers) watcher();
    });
    mirror.refresh();
    if (focused?.isConnected) focused.focus();
    for (const guest of this.guests) guest(other);
    for (const watcher of this.watchers) watcher();
    if (this.settled) this.settle();
    return { over };
  }

  /** Does what can wait, now and for each workbook to come. */
  settle(): void {
    this.settled = true;
    const { model } = this;
    calculateWhenIdle(model, () => model === this.now?.model);
  }

  private close(): void {
    if (!this.now) return;
    this.now.model.off("update", this.now.mirror);
    this.now.view.close();
  }

  /** The engine unmounts everything after an error in one component: the same model is then drawn again. */
  private ended(model: Model): void {
    if (model !== this.now?.model) return;
    const words = "The spreadsheet had an error and stopped.";
    const again = ++this.ends > 2 ? Promise.reject(new Error("again and again")) : this.show(this.id, this.content(), this.readOnly);
    again.then(
      () => this.asks.notify(`${words} It was opened again, with your last change.`),
      () => this.asks.notify(`${words} Everything shown as saved is kept: reload the page, or open another workbook.`),
    );
  }

  /** The workbook's content as of now, and what of it the engine cannot export. */
  told(): { readonly content: Content & { readonly book: WorkbookData }; readonly faults: readonly Fault[] } {
    const { model, beside } = this;
    const { book, faults } = bookOf(model);
    return { content: { book, shown: model.getters.getActiveSheetId(), ...beside }, faults };
  }

  content(): Content & { readonly book: WorkbookData } {
    return this.told().content;
  }

  /** The workbook as a file for any spreadsheet program. */
  file(): Promise<Uint8Array> {
    return saved(this.model, this.beside, engine);
  }

  /** As much of it as tells what saving would lose. */
  shape(): Content {
    return { book: shapeOf(this.model), ...this.beside };
  }

  document(namespace: string): string | undefined {
    return this.beside.documents[namespace];
  }

  setDocument(namespace: string, xml: string): void {
    this.beside = { ...this.beside, documents: { ...this.beside.documents, [namespace]: xml } };
    this.changed();
  }

  /** Tells every change of what is shown or selected; the answer stops it. */
  watch(watcher: () => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }

  /** Tells that a workbook is shown anew, and whether it is another one; the answer stops it. */
  replaced(guest: (other: boolean) => void): () => void {
    this.guests.add(guest);
    return () => this.guests.delete(guest);
  }
}
