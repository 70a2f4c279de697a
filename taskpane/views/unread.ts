import { html, nothing, type TemplateResult } from "lit";
import type { Found } from "../../src/checklist/part";

/** Says of lists that cannot be read that they stay as they are, and saves them aside. */
export function unreadNotice(unread: Found["unread"], saveAside: () => void): TemplateResult | typeof nothing {
  if (!unread.length) return nothing;
  const newer = unread.some(({ state }) => state === "newer");
  return html`<div class="notice" role="note">
    <p><strong>${newer ? "This workbook holds a list from a newer Porewise." : "This workbook holds a list that is damaged."}</strong>
    It stays in the workbook, unchanged. Below is a new list, kept beside it.</p>
    <fluent-button id="save-aside" @click=${saveAside}>Save the old list to a file</fluent-button>
  </div>`;
}

/** Says why the workbook has not taken the list. */
export function troubleNotice(trouble: string, again: () => void): TemplateResult | typeof nothing {
  if (!trouble) return nothing;
  return html`<div class="notice failed" role="alert"><p><strong>Not kept.</strong> ${trouble}</p>
    <fluent-button @click=${again}>Try again</fluent-button></div>`;
}
