import type { Model } from "@odoo/o-spreadsheet";
import { engine } from "./vendor";

/** Largest movement in pixels between pointer down and up that still is a click, not a drag. */
const slip = 4;

/** Opens the link in the selected cell; answers whether there is one. */
export function follow(model: Model, notify: (words: string) => void): boolean {
  const { link } = model.getters.getEvaluatedCell(model.getters.getActivePosition());
  if (!link) return false;
  engine.links.openLink(link, { model, notifyUser: ({ text }: { text: string }) => notify(text) } as never);
  return true;
}

/** A press on a link opens it, as everywhere; a drag, or a press with a key held, selects as usual. */
export function followOnPress(grid: HTMLElement, act: () => void): void {
  let down: { x: number; y: number } | undefined;
  const isPlain = ({ target, shiftKey, ctrlKey, metaKey, altKey }: MouseEvent) =>
    !shiftKey && !ctrlKey && !metaKey && !altKey && (target as Element).classList.contains("o-grid-overlay");
  grid.addEventListener("pointerdown", (event) => {
    down = event.button === 0 && isPlain(event) ? { x: event.clientX, y: event.clientY } : undefined;
  });
  grid.addEventListener("click", (event) => {
    if (down && isPlain(event) && Math.hypot(event.clientX - down.x, event.clientY - down.y) <= slip) act();
    down = undefined;
  });
}
