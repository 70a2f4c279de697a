import { html, nothing, type TemplateResult } from "lit";
import type { Run } from "../../src/run/schema";
import { spell } from "./clockwords";
import type { RunKeeping } from "./runkeeping";

/** What the workbook and the browser keep of runs, in words. */

/** A run that this browser has and the workbook does not. */
export function strayView(
  stray: Run | undefined,
  now: number,
  { take, leave }: Readonly<Record<"take" | "leave", () => void>>,
): TemplateResult | typeof nothing {
  if (!stray) return nothing;
  return html`<div class="notice"><p>A run that began ${spell(now - stray.origin)} ago is not in this workbook: ${stray.name}.</p>
    <div class="run-row"><button type="button" class="run-second" id="run-take" @click=${take}>Continue it here</button><button type="button" class="run-small" @click=${leave}>Cancel</button></div></div>`;
}

export function earlierView(earlier: readonly Run[]): TemplateResult | typeof nothing {
  if (!earlier.length) return nothing;
  return html`<details class="run-all" id="run-earlier"><summary>Earlier runs</summary><ul>${earlier.map(
    (run) =>
      html`<li>${new Date(run.origin).toLocaleDateString(run.system === "US" ? "en-US" : "sv-SE")}: ${run.name}${run.record?.stands ? ", written down" : ""}</li>`,
  )}</ul></details>`;
}

/** Why the workbook has not taken the run, and what in it cannot be read. */
export function troubleView(keeping: RunKeeping): TemplateResult {
  const { trouble, unread } = keeping;
  return html`
    ${trouble ? html`<div class="notice failed" role="alert"><p>This run is not in the workbook yet. ${trouble} It is kept in this browser meanwhile.</p><button type="button" class="run-second" @click=${() => keeping.again()}>Try again</button></div>` : nothing}
    ${unread.length ? html`<p class="notice">${unread.length === 1 ? "One record of runs" : `${unread.length} records of runs`} in this workbook cannot be read. It stays as it is.</p>` : nothing}`;
}
