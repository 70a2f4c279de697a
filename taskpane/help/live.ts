import { html, nothing, render } from "lit";
import * as z from "zod/mini";
import { cellsOf, type Entries } from "../../shared/form";
import { catalogue, cellName } from "../../src/catalogue";
import { found } from "../../src/help/search";
import { isMeant, tasks } from "../../src/help/tasks";
import { ask, type ShopChoice, shopCells, shopName } from "../asking";
import { drawingsOf } from "../drawings/drawings";
import { followBrowser } from "../theme";
import { fieldRow } from "../views/field";
import { figure } from "../views/figure";
import { answerOf, toldOf } from "../views/result";

/** What a page of help does beyond being read: its example answers while it is typed into, and the list of pages is searched. */

interface Example {
  readonly name: string;
  readonly typed: Readonly<Record<string, string>>;
  /** A shop's settings that the example needs. */
  readonly shop?: readonly (readonly (string | number)[])[];
}

function example(place: HTMLElement): void {
  const { name, typed, shop } = JSON.parse(place.dataset.example!) as Example;
  const contract = catalogue.find((own) => own.name === name)!;
  let entries: Entries = Object.fromEntries(Object.entries(typed).map(([field, text]) => [field, { typed: text }]));
  let choice: ShopChoice = shop ? shopName : "US";

  const draw = (): void => {
    const asked = ask(contract, entries, choice, shop);
    const cells = asked.fields.map((field) => cellsOf(field, entries[field.name]));
    const given = [...cells, shopCells(choice, shop)];
    const told = toldOf(contract, given, asked);
    const drawn = asked.answer && !asked.blank && !asked.many ? drawingsOf(contract, { name, cells: given, answer: asked.answer }, 0) : [];
    const set = (field: string, text: string | undefined) => {
      entries = { ...entries, [field]: text === undefined ? undefined : { typed: text } };
      draw();
    };
    const unit = (own: ShopChoice, words: string) => html`<label><input type="radio" name="units" .checked=${choice === own}
      @change=${() => {
        choice = own;
        draw();
      }} /> ${words}</label>`;
    render(
      html`${
        contract.shop && !shop
          ? html`<fieldset class="shops"><legend>Units</legend>${unit("US", "inches, quarts, °F")}${unit("SI", "millimeters, liters, °C")}</fieldset>`
          : nothing
      }
      ${asked.fields.map((field) =>
        fieldRow(field, entries[field.name], asked.troubles[field.name], {
          typed: (text) => set(field.name, text),
          clear: () => set(field.name, undefined),
        }),
      )}
      <section class="answer" aria-labelledby="answer-title">
        <h3 id="answer-title">Answer</h3>
        <div id="answer" role="status">${answerOf(contract, asked, told)}</div>
      </section>
      <p>The same in a cell:</p>
      <code class="formula" id="formula">${asked.formula}</code>
      ${drawn.map(figure)}`,
      place,
    );
  };
  place.replaceChildren();
  draw();
}

/** Filters the list to the pages that answer the question, the best first. */
function search(field: HTMLInputElement): void {
  const list = document.getElementById("found")!;
  const all = document.getElementById("all")!;
  const entry = (href: string, words: string, code = "") =>
    html`<li><a href=${href}>${words}</a>${code ? html` <code>${code}</code>` : nothing}</li>`;
  const look = (): void => {
    const question = field.value.trim();
    all.hidden = question !== "";
    const { hits, near } = question ? found(question) : { hits: [], near: [] };
    const jobs = question ? tasks.filter((task) => isMeant(task, question)) : [];
    const none = question && !hits.length && !jobs.length;
    render(
      html`${none ? html`<p role="status">${near.length ? "No match. Did you mean one of these?" : "No match. Try other words."}</p>` : nothing}
        <ul class="pages">${jobs.map(({ id, title }) => entry(`${id}.html`, title))}
        ${(hits.length ? hits : near).map((contract) => entry(`${contract.name.toLowerCase()}.html`, contract.asks, cellName(contract)))}</ul>`,
      list,
    );
  };
  field.addEventListener("input", look);
  look();
}

// The page forbids compiling code, and trying to would be reported.
z.config({ jitless: true });
followBrowser();
const place = document.getElementById("example");
if (place) example(place);
const field = document.getElementById("search");
if (field instanceof HTMLInputElement) search(field);
