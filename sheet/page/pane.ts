import type { SheetHost } from "../../shared/host";
import { draftOf, keepDraft } from "../../taskpane/draft";
import { paneFrame } from "./frame";

const draftName = "pane is open";

/** The side pane beside the grid, in a frame of its own so that neither's keys and styles reach the other. */
export class Pane {
  private frame: HTMLIFrameElement | undefined;

  constructor(
    private readonly side: HTMLElement,
    private readonly button: HTMLElement,
    private readonly host: SheetHost,
    private readonly around: {
      readonly tell: (words: string) => void;
      /** Keys of the page hold in the frame too. */
      readonly listen: (inside: Window) => void;
      readonly toGrid: () => void;
    },
  ) {
    button.addEventListener("click", () => this.toggle());
    if (draftOf(draftName, Boolean)) this.show(true);
  }

  get isOpen(): boolean {
    return !this.side.hidden;
  }

  focus(): boolean {
    if (!this.isOpen) return false;
    this.frame?.contentWindow?.focus();
    this.frame?.focus();
    return true;
  }

  holds(at: Element): boolean {
    return at === this.frame;
  }

  private show(open: boolean): void {
    this.side.hidden = !open;
    this.button.setAttribute("aria-expanded", String(open));
    if (open && !this.frame) this.load();
  }

  private toggle(): void {
    this.show(!this.isOpen);
    keepDraft(draftName, this.isOpen || undefined);
    if (this.isOpen) this.focus();
    else this.around.toGrid();
  }

  private load(): void {
    const frame = paneFrame("Side pane");
    frame.addEventListener("load", () => {
      const inside = frame.contentWindow as Window & { showPane?: (host: SheetHost) => void };
      try {
        this.around.listen(inside);
        inside.showPane?.(this.host);
      } catch {
        // The browser's own error page is of another origin: the next press loads the pane again.
        frame.remove();
        this.frame = undefined;
        this.show(false);
        this.around.tell("The side pane cannot be loaded right now: press again when you are connected.");
      }
    });
    this.side.append(frame);
    this.frame = frame;
  }
}
