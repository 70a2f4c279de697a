import { html, nothing, svg, type TemplateResult } from "lit";
import type { Shown } from "../drawings/drawings";

/** A drawing with its title, the meaning of its colours, and what it says in words. */
export function figure({ drawing, week, loads }: Shown, turn: (week: number) => void): TemplateResult {
  const { title, picture, width, height, says, legend } = drawing;
  return html`<figure class="drawing">
    <h3>${title}</h3>
    <svg viewBox="0 0 ${width} ${height}" role="img" aria-label="${title}: ${says}">${picture}</svg>
    ${legend.length ? html`<ul class="legend">${legend.map(([mark, words]) => html`<li><svg viewBox="0 0 14 14" aria-hidden="true">${svg`<rect class=${mark} x="1" y="1" width="12" height="12" />`}</svg>${words}</li>`)}</ul>` : nothing}
    ${
      week && week.last > 0
        ? html`<div class="buttons">
          <fluent-button id="week-back" ?disabled-focusable=${week.now === 0} @click=${() => week.now > 0 && turn(week.now - 1)}>Week before</fluent-button>
          <fluent-button id="week-on" ?disabled-focusable=${week.now === week.last} @click=${() => week.now < week.last && turn(week.now + 1)}>Week after</fluent-button>
        </div>`
        : nothing
    }
    ${loads?.length ? html`<ul class="loads">${loads.map(({ name, pieces, startBy, done }) => html`<li>Load ${name}, ${pieces}: start by <strong>${startBy}</strong>, done ${done}</li>`)}</ul>` : nothing}
  </figure>`;
}
