import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import { capital } from "../../shared/capital";
import type { Typed } from "../../src/labels/part";
import { commonSizes, type LabelSizes, papers, sizeNames } from "../../src/labels/sizes";
import { type Sources, sourcesOf } from "../sources";
import { today } from "../today";
import { standingOf, tokensOf, tubOf } from "./labelled";
import { cutIn, type LabelSheet, laidOut, pageFor, paperView } from "./labelpaper";
import { counts, keepSizes, keptSizes, type Slip, sizesOf } from "./labelsizes";
import { View } from "./view";

const mostLabels = 2000;

const typedOf = (sizes: LabelSizes): Typed =>
  Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, String(size)])) as Typed;

/** Labels for tubs and pieces in sizes of one's own, printed from here. */
@customElement("pore-labels")
export class Labels extends View {
  @state() private sources: Sources | undefined;
  @state() private typed: Typed = typedOf(commonSizes.US);
  @state() private tubs = "1";
  @state() private first = "1";
  @state() private day = today();
  @state() private slip: Slip | undefined;
  /** What is on the paper, while it is printed. */
  @state() private sheets: readonly LabelSheet[] = [];
  private sizes: LabelSizes | undefined;

  override firstUpdated(): void {
    this.look();
    this.host.replaced?.(() => this.look());
  }

  private async look(): Promise<void> {
    this.sources = await sourcesOf(this.host, 0);
    const { system } = this.sources;
    this.typed = (await keptSizes(this.host, system)) ?? typedOf(commonSizes[system]);
  }

  private whole(text: string, field: string, least: number): number | undefined {
    const number = Number(text);
    if (text.trim() && Number.isInteger(number) && number >= least && number <= mostLabels) return number;
    this.slip = { field, words: `Type a whole number from ${least} to ${mostLabels}.` };
    return undefined;
  }

  /** All that is typed, as it can be printed; undefined where something is wrong. */
  private read(): { readonly sizes: LabelSizes; readonly tubs: number; readonly first: number } | undefined {
    const sizes = sizesOf(this.typed, this.sources!);
    this.slip = "field" in sizes ? sizes : undefined;
    if ("field" in sizes) return undefined;
    const tubs = this.whole(this.tubs, "tubs", 0);
    const first = this.whole(this.first, "first", 1);
    return tubs === undefined || first === undefined ? undefined : { sizes, tubs, first };
  }

  private print = async (event: Event): Promise<void> => {
    event.preventDefault();
    // The sheets may have changed since they were last read.
    const sources = await sourcesOf(this.host, 0);
    this.sources = sources;
    const read = this.read();
    if (!read) return this.focusOn(`#label-${this.slip!.field}`);
    const { sizes, tubs, first } = read;
    const labels = [...Array.from({ length: tubs }, () => tubOf(sources)), ...tokensOf(sources, first, this.day)].slice(0, mostLabels);
    if (!labels.length) return this.tell("There is nothing to label: type pieces on Blanks first, or ask for a tub.", true);
    this.sizes = sizes;
    this.sheets = laidOut(labels, sizes);
    await this.updateComplete;
    const cut = cutIn(this);
    if (cut !== undefined) {
      this.slip = { field: "height", words: `Too small for its words in 9 pt: “${cut}”. Use larger labels, or a shorter name.` };
      this.sheets = [];
      return this.focusOn("#label-height");
    }
    const giveBack = pageFor(sources.system);
    // The sizes are kept before the print dialog opens: it would block that.
    const hindered = await keepSizes(this.host, sources.system, this.typed);
    print();
    if (hindered) this.tell(`The label sizes are not in this workbook. ${hindered}`, true);
    giveBack();
    this.sheets = [];
  };

  private field(id: string, label: string, value: string, typed: (value: string) => void, type = "text"): TemplateResult {
    const wrong = this.slip?.field === id;
    return html`<div class="run-field">
      <label for="label-${id}">${label}</label>
      <input id="label-${id}" type=${type} inputmode=${type === "text" ? "decimal" : nothing} autocomplete="off" .value=${value}
        aria-invalid=${wrong} aria-describedby=${wrong ? `label-${id}-slip` : nothing} @input=${(event: Event) => typed((event.target as HTMLInputElement).value)} />
      ${wrong ? html`<p class="fault" id="label-${id}-slip">${this.slip!.words}</p>` : nothing}
    </div>`;
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.sources) return nothing;
    const { name, unit } = papers[this.sources.system];
    return html`<form class="labels-form" @submit=${this.print} novalidate>
      <p id="labels-standing">${standingOf(this.sources)}</p>
      <div class="run-three">
        ${this.field("tubs", "Tubs", this.tubs, (tubs) => {
          this.tubs = tubs;
        })}
        ${this.field("first", "First piece", this.first, (first) => {
          this.first = first;
        })}
        ${this.field(
          "day",
          "Day",
          this.day,
          (day) => {
            this.day = day;
          },
          "date",
        )}
      </div>
      <details class="run-all" ?open=${this.slip !== undefined && this.slip.field in sizeNames}>
        <summary>Label sizes, on ${name}</summary>
        <p class="hint">They are kept in this workbook when you print.</p>
        <div class="run-two">${(Object.entries(sizeNames) as [keyof LabelSizes, string][]).map(([field, label]) =>
          this.field(field, `${capital(label)}${counts.includes(field) ? "" : `, ${unit}`}`, this.typed[field], (typed) => {
            this.typed = { ...this.typed, [field]: typed };
          }),
        )}</div>
      </details>
      <fluent-button id="print-labels" type="submit">Print labels</fluent-button>
      <p class="hint">In the print dialog choose actual size, 100 %. For plain paper, print and cut along the rows.</p>
    </form>${this.sheets.length && this.sizes ? paperView(this.sheets, this.sources.system, this.sizes) : nothing}`;
  }
}
