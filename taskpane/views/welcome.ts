import { html, type TemplateResult } from "lit";
import { formulaOf } from "../../shared/formula";
import { catalogue, cellName } from "../../src/catalogue";
import { spoken } from "../spoken";

const keptName = "porewise:welcomed";
const first = ["FILL", "BAKE", "GRAVITY"];

/** Whether this browser has not shown it yet; one that keeps nothing is not asked again and again. */
export function isFirstRun(): boolean {
  try {
    return localStorage.getItem(keptName) === null;
  } catch {
    return false;
  }
}

export function welcomed(): void {
  try {
    localStorage.setItem(keptName, "yes");
  } catch {
    // Then it is shown once more.
  }
}

const tries = first.flatMap((name) => catalogue.find((contract) => contract.name === name) ?? []);

/** What a person sees who opens the pane for the first time. */
export const welcome = (close: () => void): TemplateResult => html`<section class="notice" id="welcome" aria-labelledby="welcome-title">
  <h2 id="welcome-title">Type =PORE. in a cell</h2>
  <p>Excel then lists the functions of Porewise. Three to try:</p>
  <ul>${tries.map(
    (contract) =>
      html`<li>${contract.asks}<br /><code class="formula">${spoken(formulaOf(cellName(contract), contract.worked.typed))}</code></li>`,
  )}</ul>
  <fluent-button id="welcome-close" @click=${close}>Got it</fluent-button>
</section>`;
