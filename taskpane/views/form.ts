import { html, nothing, type TemplateResult } from "lit";
import { customElement, property, state } from "lit/decorators.js";
import { live } from "lit/directives/live.js";
import type { Cells } from "../../shared/columns";
import type { Contract } from "../../shared/contract";
import { cellsOf, type Entries, type Entry } from "../../shared/form";
import type { Call } from "../../shared/host";
import { cellName } from "../../src/catalogue";
import { formatsOf } from "../answer";
import { type Asked, ask, keptOf, reread, type ShopChoice, shopCells, shopName } from "../asking";
import { draftOf, keepDraft } from "../draft";
import type { Drawing } from "../drawings/drawing";
import { drawingsOf } from "../drawings/drawings";
import { spoken } from "../localformula";
import { fieldRow } from "./field";
import { figure } from "./figure";
import { helpLink } from "./helplink";
import { answerOf, backing, toldOf } from "./result";
import { View } from "./view";

interface Draft {
  readonly shop: ShopChoice;
  readonly entries: ReturnType<typeof keptOf>;
}

const shopWords: Readonly<Record<ShopChoice, string>> = {
  US: "inches, quarts, °F",
  SI: "millimeters, liters, °C",
  [shopName]: "as set on My Shop",
};

/** One function to try: typed into, it answers at every keystroke, and what it says can go into a cell. */
@customElement("pore-form")
export class Form extends View {
  @property({ attribute: false }) contract!: Contract;
  @state() private entries: Entries = {};
  @state() private shop: ShopChoice = "US";
  @state() private table: Cells | undefined;
  /** A filled cell: the person is asked before it is overwritten. */
  @state() private filled = "";
  private unwatch: (() => void) | undefined;

  private get draftName(): string {
    return `form-${this.contract.name}`;
  }

  override async firstUpdated(): Promise<void> {
    this.table = await this.read(shopName);
    const draft = draftOf(this.draftName, (kept) => kept as Draft);
    this.shop = draft?.shop ?? (this.table ? shopName : "US");
    if (this.shop === shopName && !this.table) this.shop = "US";
    if (draft) this.entries = await reread(draft.entries, this.read);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.unwatch = this.host.watch(this.refresh);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatch?.();
  }

  private read = (reference: string) => this.host.read(reference);

  /** The sheet changed: cells that the form refers to are read again. */
  private refresh = async (): Promise<void> => {
    this.filled = "";
    if (Object.values(this.entries).some((entry) => entry?.reference !== undefined)) this.entries = await reread(this.entries, this.read);
    if (this.shop === shopName) this.table = await this.read(shopName);
  };

  private keep(): void {
    keepDraft(this.draftName, { shop: this.shop, entries: keptOf(this.entries) } satisfies Draft);
  }

  private set(name: string, entry: Entry | undefined): void {
    this.entries = { ...this.entries, [name]: entry };
    this.filled = "";
    // The message about the last formula does not apply to this one.
    this.tell("");
    this.keep();
  }

  private setShop(shop: ShopChoice): void {
    this.shop = shop;
    this.keep();
  }

  private useSelection = async (name: string, label: string): Promise<void> => {
    const selection = await this.host.selection();
    const cells = selection && (await this.read(selection.address));
    if (!selection || !cells) {
      this.tell("Select cells on the sheet first, 20,000 at most.", true);
      return;
    }
    this.set(name, { reference: selection.address, cells });
    this.tell(`${label}: from ${selection.address}.`);
    this.focusOn(`#field-${name}`);
  };

  private put = async (asked: Asked, over: boolean): Promise<void> => {
    const rows = asked.answer?.length ?? 1;
    const formats = formatsOf(this.contract);
    const ended = await this.host.write(asked.formula, { formats, rows }, over);
    this.filled = "";
    if (ended.filled && !over) {
      this.filled = ended.words ?? "This cell is not empty.";
      this.tell("");
      this.focusOn("#put-over");
      return;
    }
    this.tellEnd(ended, "Formula inserted.");
    if (over) this.focusOn("#put");
  };

  private shops(): TemplateResult | typeof nothing {
    if (!this.contract.shop) return nothing;
    const choices: ShopChoice[] = this.table ? [shopName, "US", "SI"] : ["US", "SI"];
    return html`<fieldset class="shops">
      <legend>Units</legend>
      ${choices.map(
        (
          choice,
        ) => html`<label><input type="radio" name="shop" .checked=${live(choice === this.shop)} @change=${() => this.setShop(choice)} />
          ${shopWords[choice]}</label>`,
      )}
    </fieldset>`;
  }

  private putting(asked: Asked): TemplateResult {
    const ready = asked.answer !== undefined && !asked.blank;
    const stop = () => {
      this.filled = "";
      this.tell("");
      this.focusOn("#put");
    };
    return html`<h3>In a cell</h3>
      <code class="formula" tabindex="0" role="group" aria-label="Formula">${spoken(asked.formula)}</code>
      ${
        this.filled
          ? html`<div class="notice" role="alert"><p>${this.filled}</p><div class="buttons">
            <fluent-button id="put-over" @click=${() => this.put(asked, true)}>Replace</fluent-button>
            <fluent-button @click=${stop}>Cancel</fluent-button></div></div>`
          : html`<fluent-button id="put" appearance="primary" ?disabled-focusable=${!ready} @click=${() => ready && this.put(asked, false)}>
            Insert formula</fluent-button>`
      }`;
  }

  /** Pictures of a single answer, to the numbers as they are typed. */
  private drawn(asked: Asked, cells: Call["cells"]): readonly Drawing[] {
    const { answer } = asked;
    if (!answer || asked.blank || asked.many) return [];
    return drawingsOf(this.contract, { name: this.contract.name, cells, answer }, 0);
  }

  override render(): TemplateResult {
    const { contract } = this;
    const asked = ask(contract, this.entries, this.shop, this.table);
    const cells = asked.fields.map((field) => cellsOf(field, this.entries[field.name]));
    const given = [...cells, shopCells(this.shop, this.table)];
    const told = toldOf(contract, given, asked);
    const [first, ...others] = this.drawn(asked, given);
    return html`<h2 class="question" id="question" tabindex="-1">${contract.asks}</h2>
      <p class="quiet"><code>${cellName(contract)}</code>${contract.per === "piece" ? ": for one piece, or for each row of a column" : ""}</p>
      ${contract.before ? html`<p>${contract.before.text.join("")}</p>` : ""}
      ${this.shops()}
      ${asked.fields.map((field) =>
        fieldRow(field, this.entries[field.name], asked.troubles[field.name], {
          typed: (typed) => this.set(field.name, { typed }),
          useSelection: () => this.useSelection(field.name, field.label),
          clear: () => {
            this.set(field.name, undefined);
            this.focusOn(`#field-${field.name}`);
          },
        }),
      )}
      <section class="answer" aria-labelledby="answer-title">
        <h3 id="answer-title">Answer</h3>
        <div id="answer" role="status">${answerOf(contract, asked, told)}</div>
        ${first ? figure(first) : nothing}
      </section>
      ${this.putting(asked)}
      ${others.map(figure)}
      ${backing(contract)}
      ${helpLink(`${contract.name.toLowerCase()}.html`, "Help on this question")}`;
  }
}
