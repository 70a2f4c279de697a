/** Arrow keys along a row of things that the engine made for a pointer alone: its menus, its sheets. */
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

/** A press as the engine waits for it: some of its things act on the pointer going down, some on the click. */
export function press(item: HTMLElement): void {
  item.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true, button: 0 }));
  item.dispatchEvent(new PointerEvent("pointerup", { bubbles: true, cancelable: true, button: 0 }));
  item.click();
}
