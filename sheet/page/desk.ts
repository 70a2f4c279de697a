import type { Model, WorkbookData } from "@odoo/o-spreadsheet";
import { type Beside, saved } from "../file/save";
import { fitFrozen } from "./frozen";
import { type Asks, mount, onEntry, open } from "./grid";
import type { Content } from "./kept/work";
import { Mirror, type Places } from "./mirror";
import { Spoken } from "./spoken";
import { engine } from "./vendor";

/** What has the focus, in the frame of the pane too: a frame that loses it forgets where it was. */
function focusedIn({ activeElement }: Document): HTMLElement | null {
  const inside = activeElement instanceof HTMLIFrameElement ? activeElement.contentDocument : null;
  return inside ? focusedIn(inside) : (activeElement as HTMLElement | null);
}

/** The workbook on the page: one at a time, drawn by the engine, with what the engine does not hold beside it. */
export class Desk {
  private now: { readonly model: Model; readonly close: () => void } | undefined;
  private beside: Beside = { documents: {}, print: {} };
  private readonly watchers = new Set<() => void>();
  private readonly guests = new Set<(other: boolean) => void>();
  private id = "";
  readOnly = false;

  constructor(
    private readonly places: Places,
    private readonly asks: Asks,
    private readonly changed: () => void,
  ) {}

  get model(): Model {
    if (!this.now) throw new Error("No workbook is on the page yet.");
    return this.now.model;
  }

  /** Puts a workbook in the place of the one that is shown; where it does not open this throws, and the other stays. */
  async show(id: string, { book, shown, ...beside }: Content, readOnly: boolean): Promise<void> {
    const model = open(book, readOnly, () => this.changed());
    const sheetIdFrom = model.getters.getActiveSheetId();
    if (shown) model.dispatch("ACTIVATE_SHEET", { sheetIdFrom, sheetIdTo: shown });
    this.now?.close();
    this.beside = beside;
    this.readOnly = readOnly;
    const spoken = new Spoken(model);
    onEntry(model, (at) => spoken.before(at));
    const mirror = new Mirror(model, this.places, spoken);
    const makeRoom = fitFrozen(model);
    model.on("update", mirror, () => {
      makeRoom();
      mirror.refresh();
      for (const watcher of this.watchers) watcher();
    });
    // A grid that is drawn anew takes the focus.
    const focused = focusedIn(document);
    const unmount = await mount(model, this.places.grid, this.asks);
    this.now = {
      model,
      close: () => {
        model.off("update", mirror);
        unmount();
      },
    };
    mirror.refresh();
    if (focused?.isConnected) focused.focus();
    const other = id !== this.id;
    this.id = id;
    for (const guest of this.guests) guest(other);
    for (const watcher of this.watchers) watcher();
  }

  /** All that the workbook is made of, as of now. */
  content(): Content & { readonly book: WorkbookData } {
    const { model, beside } = this;
    return { book: model.exportData(), shown: model.getters.getActiveSheetId(), ...beside };
  }

  /** The workbook as a file for any spreadsheet program. */
  file(): Promise<Uint8Array> {
    return saved(this.model, this.beside, engine);
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
