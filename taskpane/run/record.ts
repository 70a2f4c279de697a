import { html, nothing, type TemplateResult } from "lit";
import type { Run } from "../../src/run/schema";
import type { Recorder } from "./recorder";

/** "Write it down": a preview of what goes where, and the way to undo it. */
export function recordView(run: Run, recorder: Recorder): TemplateResult {
  const { writing, words, failed } = recorder;
  const said = words ? html`<p class=${failed ? "run-problem" : "run-said"} role="status" id="run-recorded">${words}</p>` : nothing;
  if (run.record?.stands)
    return html`<section class="run-record">${said}<p>This run is in the Run Log, the Resin Book and the Price Tag.</p>
      <button type="button" class="run-second" id="run-unwrite" @click=${() => recorder.undo(run)}>Undo</button></section>`;
  if (!writing)
    return html`<section class="run-record">${said}
      <button type="button" class="run-second" id="run-look" @click=${() => recorder.look(run)}>Write it down</button></section>`;
  return html`<section class="run-record">${said}
    <h3>This will be written</h3>
    ${writing.entries.map(({ sheet, words: all }) => html`<h4>${sheet}</h4><ul>${all.map((one) => html`<li>${one}</li>`)}</ul>`)}
    ${writing.missing.map((one) => html`<p class="run-problem">${one}</p>`)}
    <div class="run-row">
      ${writing.blocks.length ? html`<button type="button" class="run-second" id="run-write" @click=${() => recorder.write(run)}>Write</button>` : nothing}
      <button type="button" class="run-small" id="run-unlook" @click=${recorder.leave}>Not now</button>
    </div></section>`;
}
