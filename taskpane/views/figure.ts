import { html, nothing, svg, type TemplateResult } from "lit";
import type { Drawing } from "../drawings/drawing";
import { letterOn } from "../drawings/lettering";

/** What a mark in a drawing looks like, with its letter if it has one. */
const swatch = (mark: string, letter: string | undefined): TemplateResult =>
  letter
    ? html`<svg class="lettered" viewBox="0 0 20 14" aria-hidden="true">${svg`<rect class=${mark} x="1" y="1" width="18" height="12" /><text class="middle ${letterOn(mark)}" x="10" y="10.5">${letter}</text>`}</svg>`
    : html`<svg viewBox="0 0 14 14" aria-hidden="true">${svg`<rect class=${mark} x="1" y="1" width="12" height="12" />`}</svg>`;

/** A drawing with its title, the meaning of its colors, and what it says in words. */
export function figure({ title, picture, width, height, says, legend }: Drawing): TemplateResult {
  return html`<figure class="drawing">
    <h3>${title}</h3>
    <svg class="picture" viewBox="0 0 ${width} ${height}" role="img" aria-label="${title}: ${says}">${picture}</svg>
    ${
      legend.length
        ? html`<ul class="legend">${legend.map(([mark, words, letter]) => html`<li>${swatch(mark, letter)}${letter ? html`<span class="unseen">${letter}: </span>` : nothing}${words}</li>`)}</ul>`
        : nothing
    }
  </figure>`;
}
