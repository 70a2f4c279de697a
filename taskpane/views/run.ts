import { html, nothing, type TemplateResult } from "lit";
import { leftOpen } from "../../src/checklist/list";
import type { List, Now } from "../../src/checklist/schema";

interface Handlers {
  readonly typed: (now: Now) => void;
  readonly start: (event: Event) => void;
  readonly leave: () => void;
}

const fields: readonly (readonly [name: keyof Now, label: string, type: string])[] = [
  ["when", "Day", "date"],
  ["who", "Who runs it", "text"],
  ["by", "Who stands by (optional)", "text"],
  ["calls", "Who calls for help, and the number (optional)", "text"],
];

/** Asks who runs the new run, before the ticks are cleared for it. */
export function runForm(now: Now, { typed, start, leave }: Handlers): TemplateResult {
  // Enter submits a form of several fields only through a native submit button.
  const byKey = (event: KeyboardEvent) => {
    if (event.key === "Enter" && event.target instanceof HTMLInputElement) start(event);
    if (event.key !== "Escape") return;
    event.stopPropagation();
    leave();
  };
  return html`<form class="sheet" @submit=${start} @keydown=${byKey}>
    <p>Starting a new run clears the check marks. What is not checked now stays under Earlier runs.</p>
    ${fields.map(
      ([name, label, type]) => html`<label for="safety-${name}">${label}</label>
      <input id="safety-${name}" type=${type} autocomplete="off" maxlength="80" .value=${now[name]}
        @input=${(event: Event) => typed({ ...now, [name]: (event.target as HTMLInputElement).value })} />`,
    )}
    <div class="buttons">
      <fluent-button type="submit" appearance="primary">Start</fluent-button>
      <fluent-button @click=${leave}>Cancel</fluent-button>
    </div>
  </form>`;
}

/** The run that is going on. */
export function thisRun({ when, who, by, calls }: Now): TemplateResult | typeof nothing {
  const words = [when, who, by && `${by} stands by`, calls && `for help: ${calls}`].filter(Boolean);
  return words.length ? html`<p class="quiet">This run: ${words.join(", ")}</p>` : nothing;
}

/** Runs that are over: who, when, and what was left unticked. */
export function earlierRuns(runs: List["runs"]): TemplateResult | typeof nothing {
  if (!runs.length) return nothing;
  return html`<details class="last">
    <summary>Earlier runs: ${runs.length}</summary>
    ${runs.map(
      (run) => html`<h3>${run.when}${run.who ? `, ${run.who}` : ""}: ${leftOpen(run)}</h3>
      <ul>${run.open.map((text) => html`<li>${text}</li>`)}</ul>`,
    )}
  </details>`;
}
