import { html, type TemplateResult } from "lit";
import { formulaOf } from "../../shared/formula";
import { catalogue, cellName } from "../../src/catalogue";
import { spoken } from "../localformula";

const first = ["FILL", "BAKE", "GRAVITY"];

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
