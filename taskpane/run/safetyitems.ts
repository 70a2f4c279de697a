import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { inStage, startRun, tick } from "../../src/checklist/list";
import { type List, type Stage, stages } from "../../src/checklist/schema";
import type { KindName } from "../../src/run/kinds";
import { today } from "../today";

/** Which part of the safety list belongs to which step. */
const stagesAt: Partial<Record<KindName, readonly Stage[]>> = {
  safety: ["before", "audience"],
  mix: ["mixing"],
  vacuum: ["vacuum"],
  soak: ["soaking"],
  bake: ["oven"],
  cool: ["after"],
};

/** The part of the safety list that a step asks for: the very items of the list, ticked here as there. */
export function safetyItems(list: List, kind: KindName, set: (list: List) => void): TemplateResult | typeof nothing {
  const own = stagesAt[kind] ?? [];
  const items = own.flatMap((stage) => inStage(list, stage));
  if (!items.length) return nothing;
  const done = items.filter((item) => item.done).length;
  const day = today();
  const isOld = kind === "safety" && list.now.when !== day && list.items.some((item) => item.done);
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
