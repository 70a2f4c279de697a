/** Roving tabindex: arrow keys along the engine's menus and sheet tabs, which it made for a pointer only. */
export function rove(place: HTMLElement, each: string, open: (item: HTMLElement) => void): void {
  place.addEventListener(
    "keydown",
    (event) => {
      const item = (event.target as HTMLElement).closest<HTMLElement>(each);
      if (!item || item.querySelector("[contenteditable=plaintext-only]")) return;
      const items = [...place.querySelectorAll<HTMLElement>(each)];
      const at = items.indexOf(item);
      const to: Readonly<Record<string, number>> = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: items.length - 1 };
      const isOpening = ["Enter", " ", "ArrowDown"].includes(event.key);
      if (!(event.key in to) && !isOpening) return;
      event.preventDefault();
      event.stopPropagation();
      if (isOpening) open(item);
      else items[(to[event.key] + items.length) % items.length]?.focus();
    },
    { capture: true },
  );
}

/** A click with pointer events: some of the engine's elements act on pointerdown, others on click. */
export function press(item: HTMLElement): void {
  item.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true, button: 0 }));
  item.dispatchEvent(new PointerEvent("pointerup", { bubbles: true, cancelable: true, button: 0 }));
  item.click();
}
