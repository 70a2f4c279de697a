import { html, nothing, type TemplateResult } from "lit";
import type { List } from "../../src/checklist/schema";

interface Handlers {
  readonly typed: (who: string) => void;
  readonly start: (event: Event) => void;
  readonly leave: () => void;
}

/** Asks who ran the last run, before the ticks are cleared for a new one. */
export function runForm(who: string, { typed, start, leave }: Handlers): TemplateResult {
  return html`<form class="sheet" @submit=${start}>
    <p>The ticks will be cleared. The day, the name and what is unticked now are kept as the last run.</p>
    <label for="safety-who">Who ran the last one</label>
    <input id="safety-who" autocomplete="off" maxlength="80" .value=${who} @input=${(e: Event) => typed((e.target as HTMLInputElement).value)} />
    <div class="buttons">
      <fluent-button type="submit" appearance="primary">Clear the ticks</fluent-button>
      <fluent-button @click=${leave}>Not yet</fluent-button>
    </div>
  </form>`;
}

/** The record of the last run: who, when, and what was left unticked. */
export function lastRun(last: List["last"]): TemplateResult | typeof nothing {
  if (!last) return nothing;
  const words = last.open.length ? `${last.open.length} left unticked` : "everything was ticked";
  return html`<details class="last">
    <summary>Last run: ${last.when}${last.who ? `, ${last.who}` : ""}; ${words}</summary>
    <ul>${last.open.map((text) => html`<li>${text}</li>`)}</ul>
  </details>`;
}
