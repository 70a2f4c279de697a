import { html, nothing, type TemplateResult } from "lit";
import { customElement, state } from "lit/decorators.js";
import { capital } from "../../shared/capital";
import type { Contract } from "../../shared/contract";
import type { Call, Selection } from "../../shared/host";
import { isFault } from "../../shared/outcome";
import { namedEquation } from "../../shared/working";
import { callsOurs } from "../../src/calls";
import { catalogue, cellName, explain } from "../../src/catalogue";
import { isScreen } from "../answer";
import { drawingsOf } from "../drawings/drawings";
import { planned } from "../drawings/planned";
import { spoken } from "../localformula";
import { cellsIn } from "../madefrom";
import { figure } from "./figure";
import { atFirst, type InSight, planFigures } from "./plan";
import { backing, besideOf } from "./result";
import { View } from "./view";

/** Which row of a call's answer the selected cell is. */
function rowOf({ answer }: Call, { row, column }: Selection): number {
  const width = answer[0]?.length ?? 1;
  const at = answer.length > 1 && width > 1 ? row * width + column : Math.max(row, answer.length > 1 ? 0 : column);
  return at < answer.length * width ? at : 0;
}

/** How the number in the selected cell came about. */
@customElement("pore-working")
export class WorkingView extends View {
  @state() private selection: Selection | undefined;
  @state() private source: Selection | undefined;
  @state() private ready = false;
  @state() private sight = atFirst;
  private unwatch: (() => void) | undefined;
  private asked = 0;
  private readonly known = new WeakMap<Call["cells"], Map<number, ReturnType<typeof explain>>>();

  override connectedCallback(): void {
    super.connectedCallback();
    this.unwatch = this.host.watch(this.look);
    this.look();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatch?.();
  }

  /** Answers may arrive out of order: only the last request counts. */
  private look = async (): Promise<void> => {
    const number = ++this.asked;
    const selection = await this.host.selection();
    const source = selection && (await this.sourceOf(selection));
    if (number !== this.asked) return;
    this.source = source;
    if (selection?.address !== this.selection?.address) this.sight = atFirst;
    this.selection = selection;
    this.ready = true;
  };

  /** Words such as “about 45 min” are made from cells beside them: the first of these that calls a function explains them. */
  private async sourceOf({ formula, address }: Selection): Promise<Selection | undefined> {
    if (callsOurs(formula)) return undefined;
    for (const reference of cellsIn(formula, address)) {
      const source = await this.host.selection(reference);
      if (source && callsOurs(source.formula)) return source;
    }
    return undefined;
  }

  private recalculate = async (): Promise<void> => {
    const address = this.selection?.address;
    const ended = await this.host.recalculate();
    await this.look();
    // Excel asks the functions in its own time.
    for (let waits = 0; ended.done && waits < 15 && !this.selection?.calls && this.selection?.address === address; waits++) {
      await new Promise((done) => setTimeout(done, 100));
      await this.look();
    }
    if (ended.done && !this.selection?.calls && this.selection?.address === address)
      this.tell("The cell was calculated, but no PORE function ran: check the spelling of its name.", true);
    else this.tellEnd(ended, "Recalculated.");
    this.focusOn("#working-title");
  };

  private turn = (to: Partial<InSight>): void => {
    this.sight = { ...this.sight, ...to };
  };

  /** Paper has room for every load. */
  private print = async (): Promise<void> => {
    const { sight } = this;
    this.turn({ load: "all" });
    await this.updateComplete;
    print();
    this.sight = sight;
  };

  /** Cached for a call and row: a plan takes long, and turning to another load needs no new answer. */
  private explained(contract: Contract, call: Call, row: number): ReturnType<typeof explain> {
    const rows = this.known.get(call.cells) ?? new Map<number, ReturnType<typeof explain>>();
    this.known.set(call.cells, rows);
    if (!rows.has(row)) rows.set(row, explain(contract, call.cells, row));
    return rows.get(row);
  }

  private lines(lines: readonly (readonly [string, string])[], title: string): TemplateResult {
    return html`<h3>${title}</h3><dl class="lines">${lines.map(([name, value]) => html`<div><dt>${capital(name)}</dt><dd>${value}</dd></div>`)}</dl>`;
  }

  private call = (call: Call, at: Selection): TemplateResult | typeof nothing => {
    const contract = catalogue.find(({ name }) => name === call.name);
    if (!contract) return nothing;
    const row = contract.per === "piece" ? rowOf(call, at) : 0;
    const told = this.explained(contract, call, row);
    const head = html`<h3 class="question">${contract.asks}</h3>
      <p class="quiet"><code>${cellName(contract)}</code>${contract.per === "piece" && call.answer.length > 1 ? html`, row ${row + 1} of ${call.answer.length}` : nothing}</p>`;
    if (!told) return html`<section class="call">${head}<p>This row is empty.</p></section>`;
    if (isFault(told)) {
      const words =
        isScreen(contract) && told.error === "#N/A"
          ? "too weak: do not pump"
          : told.message || `The cell shows ${told.error} from another cell.`;
      return html`<section class="call">${head}<p class="fault">${words}</p>${backing(contract)}</section>`;
    }
    const plan = planned(call);
    return html`<section class="call">${head}
      ${this.lines(told.answer, "Answer")}
      ${besideOf(told)}
      ${plan ? planFigures(plan, this.sight, this.turn, this.print) : drawingsOf(contract, call, row).map(figure)}
      <h3>How</h3>
      <p class="equation">${namedEquation(contract)}</p>
      <p class="equation numbers">${told.equation}</p>
      ${this.lines(told.lines, "Inputs and steps")}
      ${backing(contract)}
    </section>`;
  };

  private body(selection: Selection): TemplateResult {
    const { source } = this;
    if (source?.calls)
      return html`<p>Made from ${source.address}, and that is worked out like this:</p>${source.calls.map((call) => this.call(call, source))}`;
    if (source) return html`<p>Made from ${source.address}. Select that cell to see its working.</p>`;
    if (!callsOurs(selection.formula))
      return html`<p>There is no PORE function in this cell. Select a cell that has one, such as the resin or the bake minutes, to see how the number came
        about.</p>`;
    if (!selection.calls)
      return html`<p>This pane has not seen this cell calculate since it last changed. Calculate it to see its working.</p>
        <fluent-button id="calculate" appearance="primary" @click=${this.recalculate}>Calculate this cell</fluent-button>`;
    return html`${selection.calls.map((call) => this.call(call, selection))}`;
  }

  override render(): TemplateResult {
    if (!this.ready) return html`<p class="quiet">Reading the sheet.</p>`;
    const { selection } = this;
    if (!selection) return html`<p>Select a cell to see how its number was worked out.</p>`;
    return html`<h2 id="working-title" tabindex="-1">${selection.address}</h2>
      ${selection.formula ? html`<code class="formula" tabindex="0" role="group" aria-label="Formula">${spoken(selection.formula)}</code>` : nothing}
      <div id="working">${this.body(selection)}</div>`;
  }
}
