import { html, type TemplateResult } from "lit";
import type { Run, Step } from "../../src/run/schema";
import { kindOf } from "../../src/run/stepkinds";
import { linesOf } from "../../src/run/steplines";
import { clockOf, titleOf } from "./step";

/** The step for a row of people across the room. */
export function largeView(run: Run, step: Step, now: number, close: () => void): TemplateResult {
  const leave = (event: KeyboardEvent) => event.key === "Escape" && close();
  return html`<div class="run-big" role="dialog" aria-modal="true" aria-labelledby="run-big-title" @keydown=${leave}>
    <h2 id="run-big-title">${titleOf(run, step)}</h2>
    ${clockOf(run, step, now)}
    ${linesOf(run, step, now)
      .say.slice(0, 2)
      .map((words) => html`<p class="run-say">${words}</p>`)}
    <p class="run-caution"><span aria-hidden="true">!</span> ${kindOf(step.kind).caution}</p>
    <button type="button" class="run-second" id="run-large-close" @click=${close}>Close</button>
  </div>`;
}

/** Takes the whole screen, or gives it back. */
export async function fillScreen(on: boolean): Promise<void> {
  try {
    if (on) await document.documentElement.requestFullscreen?.();
    else if (document.fullscreenElement) await document.exitFullscreen();
  } catch {
    // Where there is no full screen it fills what there is.
  }
}
