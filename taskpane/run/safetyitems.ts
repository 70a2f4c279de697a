import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { inStage, startRun, tick } from "../../src/checklist/list";
import { type List, stages } from "../../src/checklist/schema";
import { isFromBefore, itemsAt, stagesAt } from "../../src/run/doubts";
import type { KindName } from "../../src/run/stepkinds";
import { today } from "../today";

/** The part of the safety list that belongs to a step: the same items, so a check mark here is one in the list. */
export function safetyItems(list: List, kind: KindName, set: (list: List) => void): TemplateResult | typeof nothing {
  const own = stagesAt[kind] ?? [];
  const items = itemsAt(list, kind);
  if (!items.length) return nothing;
  const done = items.filter((item) => item.done).length;
  const day = today();
  const isOld = kind === "safety" && isFromBefore(list, day);
  return html`<details class="run-all run-safety" ?open=${kind === "safety"}>
    <summary>Safety list: ${done} of ${items.length} checked</summary>
    ${
      isOld
        ? html`<p class="run-problem">These check marks are from ${list.now.when ? `the run of ${list.now.when}` : "an earlier run"}.</p>
        <button type="button" class="run-second" id="run-clear-ticks" @click=${() => set(startRun(list, { ...list.now, when: day }))}>Clear them for this run</button>`
        : nothing
    }
    ${own.map(
      (stage) => html`${own.length > 1 ? html`<h3>${stages[stage]}</h3>` : nothing}
      ${inStage(list, stage).map(
        ({ id, text, done }) => html`<label class="run-choice">
        <input type="checkbox" id="run-tick-${id}" .checked=${live(done)} @change=${(event: Event) => set(tick(list, id, (event.target as HTMLInputElement).checked))} />${text}</label>`,
      )}`,
    )}
  </details>`;
}
