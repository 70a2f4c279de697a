import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { isChanged } from "../../src/checklist/list";
import type { Item } from "../../src/checklist/schema";

interface Acts {
  readonly tick: (on: boolean) => void;
  readonly change: () => void;
  readonly move: (by: -1 | 1) => void;
  readonly restore: () => void;
  readonly remove: () => void;
}

/** An item to tick, with its form where it is being changed. */
export function itemRow({ id, text, why, done }: Item, { tick, change }: Acts, form: TemplateResult | false): TemplateResult {
  return html`<li class="item" data-done=${done}>
    <fluent-checkbox id="tick-${id}" .checked=${live(done)} @change=${(event: Event) => tick((event.target as HTMLInputElement).checked)}></fluent-checkbox>
    <label for="tick-${id}">${text}${why ? html`<span class="why">${why}</span>` : nothing}</label>
    <button class="plain" type="button" id="change-${id}" aria-expanded=${form !== false} aria-label="Change: ${text}" @click=${change}>Change</button>
    ${form || nothing}
  </li>`;
}

/** What else can be done with an item, beside the others of its stage. */
export function itemSteps(item: Item, peers: readonly Item[], { move, restore, remove }: Acts): TemplateResult {
  return html`
    <fluent-button id="move-up" ?disabled-focusable=${peers[0] === item} @click=${() => move(-1)}>Move up</fluent-button>
    <fluent-button id="move-down" ?disabled-focusable=${peers.at(-1) === item} @click=${() => move(1)}>Move down</fluent-button>
    ${isChanged(item) ? html`<fluent-button @click=${restore}>Restore the original wording</fluent-button>` : nothing}
    <fluent-button @click=${remove}>Remove</fluent-button>`;
}

/** The items that came with the list and were taken out of it. */
export function removedItems(
  items: readonly { id: string; text: string }[],
  putBack: (id: string) => void,
): TemplateResult | typeof nothing {
  if (!items.length) return nothing;
  return html`<details class="last"><summary>${items.length === 1 ? "One item" : `${items.length} items`} of the list removed</summary>
    <ul>${items.map(
      ({ id, text }) => html`<li>${text}
      <button class="plain" type="button" aria-label="Put back: ${text}" @click=${() => putBack(id)}>Put back</button></li>`,
    )}</ul></details>`;
}
