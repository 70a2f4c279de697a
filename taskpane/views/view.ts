import { LitElement } from "lit";
import { property } from "lit/decorators.js";
import type { Ended, SheetHost } from "../../shared/host";

/** What the pane says aloud and shows at its foot. */
export interface Notice {
  readonly words: string;
  readonly failed?: boolean;
}

/** A view of the pane. It lives in the page's own tree, so that one style sheet and plain labels serve all of it. */
export abstract class View extends LitElement {
  @property({ attribute: false }) host!: SheetHost;
  /** Whether it is the one in sight. */
  @property({ type: Boolean }) shown = false;

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  protected tell(words: string, failed = false): void {
    this.dispatchEvent(new CustomEvent<Notice>("notice", { detail: { words, failed }, bubbles: true }));
  }

  protected tellEnd(ended: Ended, otherwise: string): boolean {
    this.tell(ended.words ?? otherwise, !ended.done);
    return ended.done;
  }

  /** Moves the focus after the next render: the element that had it may be gone. */
  protected async focusOn(selector: string): Promise<void> {
    await this.updateComplete;
    this.querySelector<HTMLElement>(selector)?.focus();
  }
}
