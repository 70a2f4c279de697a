import type { SheetHost } from "../../shared/host";
import { draftOf, keepDraft } from "../../taskpane/draft";
import { paneFrame } from "./frame";

const draftName = "sheet is open";
/** A phone held upright: narrower than this no sheet can be read beside anything. */
const phone = matchMedia("(max-width: 599px)");

interface Places {
  /** Where the run view stands alone. */
  readonly alone: HTMLElement;
  readonly toSheet: HTMLElement;
  readonly toRun: HTMLElement;
}

/** On a phone the page opens on the run view alone; the sheet is a touch away, and so is the run from there. */
export class RunScreen {
  private frame: HTMLIFrameElement | undefined;

  constructor(
    private readonly places: Places,
    private readonly host: SheetHost,
    private readonly tell: (words: string) => void,
  ) {
    places.toSheet.addEventListener("click", () => this.turn(true));
    places.toRun.addEventListener("click", () => this.turn(false));
    phone.addEventListener("change", () => this.show());
    this.show();
  }

  private turn(toSheet: boolean): void {
    keepDraft(draftName, toSheet || undefined);
    this.show();
  }

  private show(): void {
    const { alone, toRun } = this.places;
    const on = phone.matches && !draftOf(draftName, Boolean);
    alone.hidden = !on;
    toRun.hidden = !phone.matches;
    document.documentElement.toggleAttribute("data-run", on);
    if (on && !this.frame) this.load();
  }

  private load(): void {
    const frame = paneFrame("Run", "#run");
    frame.addEventListener("load", () => {
      try {
        (frame.contentWindow as Window & { showPane?: (host: SheetHost) => void }).showPane?.(this.host);
      } catch {
        // The browser's own error page is of another origin.
        frame.remove();
        this.frame = undefined;
        this.turn(true);
        this.tell("The run view cannot be loaded right now: press Run again when you are connected.");
      }
    });
    this.places.alone.append(frame);
    this.frame = frame;
  }
}
