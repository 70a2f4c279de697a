import { html, nothing, type TemplateResult } from "lit";
import { type Drawable, loadDrawings, told, week, weeksAfter } from "../drawings/planned";
import { figure } from "./figure";

/** What of a plan is in sight. */
export interface InSight {
  readonly week: number;
  /** Index of the load; all of them for paper. */
  readonly load: number | "all";
}

export const atFirst: InSight = { week: 0, load: 0 };

/** Loads that go to paper at once, each about half a page. */
const most = 24;

function weeks(plan: Drawable, { week: now, load }: InSight, turn: (to: Partial<InSight>) => void): TemplateResult {
  const last = weeksAfter(plan);
  if (load === "all") return html`${Array.from({ length: Math.min(8, last + 1) }, (_, number) => figure(week(plan, number)))}`;
  const step = (id: string, words: string, to: number) =>
    html`<fluent-button id=${id} ?disabled-focusable=${to < 0 || to > last} @click=${() => to >= 0 && to <= last && turn({ week: to })}>${words}</fluent-button>`;
  return html`${figure(week(plan, now))}
    ${last > 0 ? html`<div class="buttons no-paper">${step("week-back", "Week before", now - 1)}${step("week-on", "Week after", now + 1)}</div>` : nothing}`;
}

function words(plan: Drawable, at: number): TemplateResult {
  const { name, resin, startBy, done } = told(plan, at);
  return html`${name}. Start by <strong>${startBy}</strong>, ${resin}. Done ${done}.`;
}

/** The week of a plan, and how its loads are packed: one load in sight, all of them on paper. */
export function planFigures(plan: Drawable, sight: InSight, turn: (to: Partial<InSight>) => void, print: () => void): TemplateResult {
  const { loads } = plan.plan;
  const shown = sight.load === "all" ? loads.slice(0, most).map((_, at) => at) : [Math.min(sight.load, loads.length - 1)];
  const choose = (event: Event) => turn({ load: Number((event.target as HTMLSelectElement).value) });
  return html`${weeks(plan, sight, turn)}
    <div class="field no-paper">
      <label for="load">How to pack load</label>
      <div class="typed"><select id="load" @change=${choose}>
        ${loads.map((_, at) => html`<option value=${at} ?selected=${at === shown[0]}>${told(plan, at).name}</option>`)}
      </select></div>
    </div>
    ${shown.map(
      (at) => html`<section class="packing"><p class="loads">${words(plan, at)}</p>${loadDrawings(plan, at).map(figure)}</section>`,
    )}
    ${sight.load === "all" && loads.length > most ? html`<p>These are the first ${most} of ${loads.length} loads.</p>` : nothing}
    <div class="buttons no-paper"><fluent-button id="print-plan" @click=${print}>Print week and loads</fluent-button></div>
    ${loads.length > most ? html`<p class="quiet no-paper">Paper takes the first ${most} of ${loads.length} loads.</p>` : nothing}`;
}
