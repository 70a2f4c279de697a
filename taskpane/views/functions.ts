import { html, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import type { Contract } from "../../shared/contract";
import { spaced } from "../../shared/working";
import { catalogue, cellName, subjects } from "../../src/catalogue";
import { found } from "../../src/help/search";
import { draftOf, keepDraft } from "../draft";
import { linkedName } from "../linkedname";
import "./form";
import { helpLink } from "./helplink";
import { View } from "./view";

/** What is asked most at the bench; all others stand behind "more". */
const used = ["UPTAKE", "FILL", "PERLOAD", "DYE", "BAKE", "MOISTURE", "EXPIRY", "PLAN"];
const first = used.flatMap((name) => catalogue.find((contract) => contract.name === name) ?? []);

const contractOf = (name: unknown): Contract | undefined => catalogue.find((one) => one.name === name);

const draftName = "functions";

const subjectTitles: Readonly<Record<string, string>> = { cure: "Oven", plan: "Week", also: "Also" };
const titleOf = (subject: string) => subjectTitles[subject] ?? spaced(subject).replace(/^./, (letter) => letter.toUpperCase());

/** The functions by the question each answers, and one of them to try. */
@customElement("pore-functions")
export class Functions extends View {
  @state() private chosen: Contract | undefined = contractOf(linkedName()) ?? draftOf(draftName, contractOf);
  @state() private search = "";
  @state() private more = false;

  private choose(contract: Contract | undefined): void {
    const left = this.chosen;
    this.chosen = contract;
    this.tell("");
    keepDraft(draftName, contract?.name);
    this.focusOn(contract ? "#question" : `#ask-${left?.name}`);
  }

  private entry = (contract: Contract, id = `ask-${contract.name}`): TemplateResult => html`<li>
    <button class="ask" type="button" id=${id} @click=${() => this.choose(contract)}>
      <span>${contract.asks}</span><code>${cellName(contract)}</code>
    </button>
  </li>`;

  private list = (contracts: readonly Contract[]): TemplateResult => html`<ul class="asks">${contracts.map((one) => this.entry(one))}</ul>`;

  /** One subject among all: a function also listed above gets another id here. */
  private listOf = (contracts: readonly Contract[]): TemplateResult =>
    html`<ul class="asks">${contracts.map((one) => this.entry(one, used.includes(one.name) ? `all-${one.name}` : undefined))}</ul>`;

  private browse(): TemplateResult {
    if (this.search.trim()) {
      const { hits, near } = found(this.search);
      const count = hits.length === 1 ? "1 match, best first." : `${hits.length} matches, best first.`;
      const none = near.length ? "No match. Did you mean one of these?" : "No match. Try other words, or pick one of these.";
      return html`<p class="quiet" role="status">${hits.length ? count : none}</p>${hits.length || near.length ? this.list(hits.length ? hits : near) : this.all()}`;
    }
    return this.all();
  }

  private all(): TemplateResult {
    const toggle = () => {
      this.more = !this.more;
    };
    return html`${this.list(first)}
      <button class="plain" type="button" id="more" aria-expanded=${this.more} @click=${toggle}>${this.more ? "Fewer" : `More: all ${catalogue.length}`}</button>
      ${
        this.more
          ? Object.entries(subjects)
              .filter(([, contracts]) => contracts.length)
              .map(([subject, contracts]) => html`<h2>${titleOf(subject)}</h2>${this.listOf(contracts)}`)
          : ""
      }
      ${helpLink("index.html", "All of help")}`;
  }

  override render(): TemplateResult {
    if (this.chosen)
      return html`<button class="plain back" type="button" id="back" @click=${() => this.choose(undefined)}>Back to all questions</button>
        <pore-form .host=${this.host} .contract=${this.chosen}></pore-form>`;
    const type = (event: Event) => {
      this.search = (event.target as HTMLInputElement).value;
    };
    return html`<label for="search">What do you want to know?</label>
      <input id="search" type="search" autocomplete="off" .value=${this.search} @input=${type} />
      ${this.browse()}`;
  }
}
