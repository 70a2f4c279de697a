/** The parts of the page in their order, for F6; each answers whether it is in sight and takes the focus. */
export interface Part {
  readonly name: string;
  readonly holds: (at: Element) => boolean;
  readonly enter: () => boolean;
}

interface Handlers {
  readonly parts: readonly Part[];
  readonly toGrid: () => void;
  readonly save: () => void;
  readonly print: (event: KeyboardEvent) => void;
  readonly follow: () => boolean;
}

/** What every key does, as the page tells it. */
const told: readonly (readonly [keys: string, does: string])[] = [
  ["F6, Shift+F6", "next or previous part of the page: buttons, menus, cells, sheets, side pane, cautions"],
  ["Escape", "back to the cells"],
  ["Arrows, Tab", "move between cells"],
  ["Enter or F2", "type into the cell; Escape leaves it as it was"],
  ["Ctrl+Enter", "open the link in the cell"],
  ["Shift+F10", "menu of the cell"],
  ["Arrows in menus and sheets", "move; Enter opens"],
  ["Ctrl+S", "save as xlsx"],
  ["Ctrl+P", "print the sheet"],
  ["Ctrl+Z, Ctrl+Y", "undo, redo"],
  ["Ctrl+F", "find"],
];

const isCommand = (event: KeyboardEvent, key: string) =>
  event.key.toLowerCase() === key && (event.ctrlKey || event.metaKey) && !event.altKey;

/** Keys that lead from part to part, and those that mean the same everywhere. The grid takes every key it can get: this comes before it. */
export class Keys {
  constructor(private readonly handlers: Handlers) {
    this.listen(window);
  }

  listen(target: Window): void {
    target.addEventListener("keydown", this.press, { capture: true });
  }

  /** The list of keys, behind a button. */
  show(button: HTMLElement, dialog: HTMLDialogElement, list: HTMLElement): void {
    list.replaceChildren(
      ...told.flatMap(([keys, does]) => [
        Object.assign(document.createElement("dt"), { textContent: keys }),
        Object.assign(document.createElement("dd"), { textContent: does }),
      ]),
    );
    button.addEventListener("click", () => dialog.showModal());
  }

  private get part(): Part | undefined {
    const at = document.activeElement;
    return at ? this.handlers.parts.find(({ holds }) => holds(at)) : undefined;
  }

  private readonly press = (event: KeyboardEvent): void => {
    const act = document.querySelector("dialog[open]") ? undefined : this.actOf(event);
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };

  private actOf(event: KeyboardEvent): (() => void) | undefined {
    const { toGrid, save, print, follow } = this.handlers;
    const name = this.part?.name;
    if (event.key === "F6" && !event.ctrlKey && !event.altKey && !event.metaKey) return () => this.step(event.shiftKey ? -1 : 1);
    if (isCommand(event, "s")) return save;
    if (isCommand(event, "p") && name !== "cells") return () => print(event);
    if (isCommand(event, "enter") && name === "cells" && follow()) return () => undefined;
    // A form of the pane may have a use of its own for it.
    if (event.key === "Escape" && name && name !== "cells" && name !== "pane" && !document.querySelector(".o-menu, [data-open]"))
      return toGrid;
    return undefined;
  }

  private step(by: 1 | -1): void {
    const { parts } = this.handlers;
    const here = this.part;
    let at = here ? parts.indexOf(here) : by > 0 ? -1 : 0;
    for (let tried = 0; tried < parts.length; tried++) {
      at = (at + by + parts.length) % parts.length;
      if (parts[at].enter()) return;
    }
  }
}
