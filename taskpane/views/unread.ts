import { html, nothing, type TemplateResult } from "lit";
import type { SheetHost } from "../../shared/host";
import type { Found } from "../../src/checklist/part";
import { saveText } from "../save";

/** Says of lists that cannot be read that they stay as they are, and offers to save them to files. */
export function unreadNotice(unread: Found["unread"], saveAside: () => void): TemplateResult | typeof nothing {
  if (!unread.length) return nothing;
  const newer = unread.some(({ state }) => state === "newer");
  return html`<div class="notice" role="note">
    <p><strong>${newer ? "This workbook holds a list from a newer Porewise." : "This workbook holds a list that is damaged."}</strong>
    It stays in the workbook, unchanged. Below is a new list, kept beside it.</p>
    <fluent-button id="save-aside" @click=${saveAside}>Save the old list to a file</fluent-button>
  </div>`;
}

/** Saves each list that cannot be read to a file of its own; the workbook keeps it too. */
export function saveUnread(unread: Found["unread"], { savesFiles }: SheetHost, tell: (words: string, failed?: boolean) => void): void {
  if (savesFiles === false) {
    tell("This pane cannot save files. The workbook keeps the old list: open it in Excel on the web to save the list to a file.", true);
    return;
  }
  for (const [i, { xml }] of unread.entries()) saveText(`safety-list-${i + 1}.xml`, xml);
  tell("It is in your downloads. The workbook keeps its own copy.");
}

/** Says why the workbook has not taken the list. */
export function troubleNotice(trouble: string, again: () => void): TemplateResult | typeof nothing {
  if (!trouble) return nothing;
  return html`<div class="notice failed" role="alert"><p><strong>Not kept.</strong> ${trouble}</p>
    <fluent-button @click=${again}>Try again</fluent-button></div>`;
}
