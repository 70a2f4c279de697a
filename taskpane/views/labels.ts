import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import { capital } from "../../shared/capital";
import { counted } from "../../shared/host";
import { isoDate } from "../../shared/serial";
import { plainUnits } from "../../shared/unit";
import type { Typed } from "../../src/labels/part";
import { commonSizes, type LabelSizes, papers, placeOf, sizeNames, sizesSlip } from "../../src/labels/sizes";
import { type Label, pieceLabels, tubLabel } from "../../src/labels/words";
import { answers } from "../../src/run/answers";
import { type Sources, sourcesOf } from "../sources";
import { today } from "../today";
import { keepSizes, keptSizes } from "./labelsizes";
import { View } from "./view";

const mostLabels = 2000;
const counts: readonly (keyof LabelSizes)[] = ["across", "down"];

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
  @state() private slip: { readonly field: string; readonly words: string } | undefined;
  /** What is on the paper, while it is printed. */
  @state() private sheets: readonly (readonly { readonly label: Label; readonly x: number; readonly y: number }[])[] = [];

  override firstUpdated(): void {
    this.look();
    this.host.replaced?.(() => this.look());
  }

  private async look(): Promise<void> {
    this.sources = await sourcesOf(this.host, 0);
    const { system } = this.sources;
    this.typed = (await keptSizes(this.host, system)) ?? typedOf(commonSizes[system]);
  }

  private sizes(): LabelSizes | undefined {
    const { shop } = this.sources!;
    const sizes: Partial<Record<keyof LabelSizes, number>> = {};
    for (const [field, label] of Object.entries(sizeNames) as [keyof LabelSizes, string][]) {
      const text = this.typed[field].trim();
      // No margin and no gap is a length that no piece has.
      const size = counts.includes(field) || Number(text) === 0 ? Number(text || Number.NaN) : answers.length(text, label, shop);
      if (typeof size === "string" || Number.isNaN(size)) {
        this.slip = { field, words: typeof size === "string" ? `${capital(size)}.` : `Type the ${label}.` };
        return undefined;
      }
      sizes[field] = size;
    }
    this.slip = sizesSlip(sizes as LabelSizes, this.sources!.system);
    return this.slip ? undefined : (sizes as LabelSizes);
  }

  private whole(text: string, field: string, least: number): number | undefined {
    const number = Number(text);
    if (text.trim() && Number.isInteger(number) && number >= least && number <= mostLabels) return number;
    this.slip = { field, words: `Type a whole number from ${least} to ${mostLabels}.` };
    return undefined;
  }

  /** The tub as My Shop and the Resin Book have it. */
  private tub(): Label {
    const { shop, system, today: run } = this.sources!;
    const day = (value: unknown) => (typeof value === "number" ? isoDate(value) : undefined);
    const mixed = answers.holds("resin mixed on", shop);
    const rate = answers.holds("resin dye rate", shop);
    const until = typeof mixed === "number" ? answers.ask("EXPIRY", { mixed }, shop)[0][0] : undefined;
    return tubLabel({
      color: run.color,
      mixedOn: day(mixed),
      useBy: day(until),
      ...(typeof rate === "number" ? { dyeRate: `${Number(rate.toPrecision(3))} ${plainUnits(system).strength.name}` } : {}),
    });
  }

  private pieces(): Label[] {
    const { shop, blanks } = this.sources!;
    const unit = String(answers.holds("scale reads", shop) ?? "g");
    const rows = blanks
      .filter(({ isLeftOut }) => !isLeftOut)
      .map(({ name, wood, count, dry, color }) => ({
        name,
        wood,
        count,
        color,
        ...(dry ? { dry: `${Number(dry.toPrecision(4))} ${unit}` } : {}),
      }));
    return pieceLabels(rows, Number(this.first) || 1, this.day);
  }

  private print = async (event: Event): Promise<void> => {
    event.preventDefault();
    // The sheets may have changed since the last look.
    this.sources = await sourcesOf(this.host, 0);
    const sizes = this.sizes();
    const tubs = sizes && this.whole(this.tubs, "tubs", 0);
    const first = sizes && this.whole(this.first, "first", 1);
    if (!sizes || tubs === undefined || first === undefined) return this.focusOn(`#label-${this.slip!.field}`);
    const labels = [...Array.from({ length: tubs }, () => this.tub()), ...this.pieces()].slice(0, mostLabels);
    if (!labels.length) return this.tell("There is nothing to label: type pieces on Blanks first, or ask for a tub.", true);
    const sheets: { label: Label; x: number; y: number }[][] = [];
    for (const [i, label] of labels.entries()) {
      const { sheet, x, y } = placeOf(i, sizes);
      sheets[sheet] ??= [];
      sheets[sheet].push({ label, x, y });
    }
    this.sheets = sheets;
    await this.updateComplete;
    const cut = [...this.querySelectorAll<HTMLElement>(".label")].find(
      ({ scrollHeight, clientHeight, scrollWidth, clientWidth }) => scrollHeight > clientHeight + 1 || scrollWidth > clientWidth + 1,
    );
    if (cut) {
      this.slip = {
        field: "height",
        words: `Too small for its words in 9 pt: “${cut.querySelector("p")!.textContent}”. Use larger labels, or a shorter name.`,
      };
      this.sheets = [];
      return this.focusOn("#label-height");
    }
    const { unit, width, height } = papers[this.sources.system];
    const page = new CSSStyleSheet();
    page.replaceSync(`@page { size: ${width}${unit} ${height}${unit}; margin: 0; }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
    // The workbook keeps what was printed, and the print dialog would hold that up.
    const hindered = await keepSizes(this.host, this.sources.system, this.typed);
    print();
    if (hindered) this.tell(`The label sizes are not in this workbook. ${hindered}`, true);
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== page);
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

  private paper(): TemplateResult | typeof nothing {
    if (!this.sheets.length) return nothing;
    const { unit, width, height } = papers[this.sources!.system];
    const { width: wide, height: high } = this.sizes()!;
    // As a property: the page allows no styles in its markup.
    const at = (sides: Readonly<Record<string, number>>) =>
      Object.entries(sides)
        .map(([side, length]) => `${side}:${length}${unit}`)
        .join(";");
    return html`<div class="labels-paper" aria-hidden="true">${this.sheets.map(
      (labels) =>
        html`<div class="labels-sheet" .style=${at({ width, height })}>${labels.map(
          ({ label, x, y }) =>
            html`<div class="label" .style=${at({ left: x, top: y, width: wide, height: high })}>${label.map((line) => html`<p>${line}</p>`)}</div>`,
        )}</div>`,
    )}</div>`;
  }

  private standing(): string {
    const { blanks, shop } = this.sources!;
    const out = blanks.filter(({ isLeftOut }) => isLeftOut);
    const sum = (rows: typeof blanks) => rows.reduce((all, { count }) => all + count, 0);
    const pieces = sum(blanks) - sum(out);
    return [
      pieces ? `${counted(pieces, "piece", "pieces")} on Blanks, one label each.` : "Blanks has no pieces yet: type them there first.",
      out.length
        ? `${counted(sum(out), "piece has", "pieces have")} no label: Blanks leaves ${out.map(({ name }) => name).join(", ")} out of the plan.`
        : "",
      Number(answers.holds("resin on hand", shop) ?? 0) > 0
        ? ""
        : "My Shop has no resin on hand: the tub’s days are left to write by hand.",
    ]
      .filter(Boolean)
      .join(" ");
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.sources) return nothing;
    const { name, unit } = papers[this.sources.system];
    return html`<form class="labels-form" @submit=${this.print} novalidate>
      <p id="labels-standing">${this.standing()}</p>
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
    </form>${this.paper()}`;
  }
}
