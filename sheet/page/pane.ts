import type { SheetHost } from "../../shared/host";
import { draftOf, keepDraft } from "../../taskpane/draft";
import { paneFrame } from "./frame";

const draftName = "pane is open";

const printing = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent) => key.toLowerCase() === "p" && (ctrlKey || metaKey) && !altKey;

/** The side pane beside the grid, in a frame of its own so that neither's keys and styles reach the other. */
export class Pane {
  private frame: HTMLIFrameElement | undefined;

  constructor(
    private readonly grid: HTMLElement,
    private readonly side: HTMLElement,
    private readonly button: HTMLElement,
    private readonly host: SheetHost,
    private readonly tell: (words: string) => void,
  ) {
    button.addEventListener("click", () => this.toggle());
    // The grid takes every key it can get: only the capture phase comes before it.
    addEventListener("keydown", this.move, { capture: true });
    if (draftOf(draftName, Boolean)) this.show(true);
  }

  private show(open: boolean): void {
    this.side.hidden = !open;
    this.button.setAttribute("aria-expanded", String(open));
    keepDraft(draftName, open || undefined);
    if (open && !this.frame) this.load();
  }

  private toggle(): void {
    this.show(Boolean(this.side.hidden));
    if (this.side.hidden) this.toGrid();
    else this.frame!.focus();
  }

  private load(): void {
    const frame = paneFrame("Side pane");
    frame.addEventListener("load", () => {
      const inside = frame.contentWindow as Window & { showPane?: (host: SheetHost) => void };
      try {
        inside.addEventListener("keydown", this.move, { capture: true });
        inside.showPane?.(this.host);
      } catch {
        // The browser's own page about what it cannot reach belongs to nobody: at the next press it is tried again.
        frame.remove();
        this.frame = undefined;
        this.show(false);
        this.tell("The side pane cannot be reached just now: press again when you are connected.");
      }
    });
    this.side.append(frame);
    this.frame = frame;
  }

  private toGrid(): void {
    window.focus();
    this.grid.querySelector<HTMLElement>(".o-grid-composer .o-composer, .o-grid .o-composer")?.focus();
  }

  /** F6 goes from the buttons to the grid to the pane and round again, Shift+F6 the other way. */
  private readonly move = (event: KeyboardEvent): void => {
    if (printing(event) && this.where() !== "grid") this.print(event);
    if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const places = this.side.hidden ? ["buttons", "grid"] : ["buttons", "grid", "pane"];
    const step = event.shiftKey ? places.length - 1 : 1;
    this.go(places[(places.indexOf(this.where()) + step) % places.length]);
  };

  /** The browser's own printing knows no more of the sheet than is in sight: the grid's preview lays out all of it. */
  private print(event: KeyboardEvent): void {
    event.preventDefault();
    this.toGrid();
    const { key, code, ctrlKey, metaKey } = event;
    document.activeElement?.dispatchEvent(new KeyboardEvent("keydown", { key, code, ctrlKey, metaKey, bubbles: true, cancelable: true }));
  }

  private where(): string {
    const at = document.activeElement;
    if (at === this.frame) return "pane";
    return at && this.grid.contains(at) ? "grid" : "buttons";
  }

  private go(place: string): void {
    if (place === "pane") this.frame!.contentWindow!.focus();
    else if (place === "grid") this.toGrid();
    else this.button.focus();
  }
}
