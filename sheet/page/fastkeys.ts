import { engine } from "./vendor";

interface Editor {
  readonly props: { readonly composerStore: { readonly editionMode: string } };
  readonly contentHelper: { readonly el: HTMLElement };
  onInput(event: InputEvent): void;
}

/**
 * A key over a selected cell begins a new text, which the engine's editor shows with its next drawing. Until then it holds the text of
 * the cell that was drawn last, and a second key would go to that: it is given the first key at once.
 */
export function keepUpWithKeys(): void {
  const { prototype } = engine.components.Composer as unknown as { prototype: Editor };
  const { onInput } = prototype;
  prototype.onInput = function (event) {
    const begins = this.props.composerStore.editionMode === "inactive";
    onInput.call(this, event);
    // Keys of an input method (IME composition) are left to the browser.
    if (!begins || !event.data || event.isComposing) return;
    const { el } = this.contentHelper;
    el.textContent = event.data;
    getSelection()?.collapse(el.firstChild, event.data.length);
  };
}
