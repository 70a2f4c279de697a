/** What the bar at the top folds away where there is little room: the buttons behind one, and the engine's toolbar. */
export class Menu {
  constructor(
    private readonly button: HTMLElement,
    private readonly acts: HTMLElement,
    tools: HTMLElement,
  ) {
    button.addEventListener("click", () => this.open(!acts.hasAttribute("data-open")));
    acts.addEventListener("click", () => this.open(false));
    addEventListener("pointerdown", ({ target }) => {
      if (!acts.contains(target as Node) && target !== button) this.open(false);
    });
    acts.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" || !acts.hasAttribute("data-open")) return;
      event.stopPropagation();
      this.open(false);
      button.focus();
    });
    tools.addEventListener("click", () => {
      const shown = document.body.toggleAttribute("data-tools");
      tools.setAttribute("aria-pressed", String(shown));
      dispatchEvent(new Event("resize"));
    });
  }

  private open(open: boolean): void {
    this.acts.toggleAttribute("data-open", open);
    this.button.setAttribute("aria-expanded", String(open));
    if (open) this.acts.querySelector<HTMLElement>("button")?.focus();
  }
}
