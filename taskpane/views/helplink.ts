import { html, nothing, type TemplateResult } from "lit";

/** A page of help, in a window of its own; a page that is one file has none beside it. */
export const helpLink = (file: string, words: string): TemplateResult | typeof nothing =>
  "porewiseInside" in globalThis ? nothing : html`<p class="help"><a href="help/${file}" target="_blank" rel="noopener">${words}</a></p>`;
