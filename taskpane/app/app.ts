import { html, LitElement, type TemplateResult } from "lit";
import { customElement, property, state } from "lit/decorators.js";
import type { SheetHost } from "../../shared/host";
import { versionText } from "../../src/version";
import { draftOf, keepDraft } from "../draft";
import { linkedName } from "../linkedname";
import { learn } from "../localformula";
import { leave } from "../pause";
import type { Notice } from "../views/view";
import { isFirstRun, welcomed } from "../welcomed";

const views = { run: "Run", safety: "Safety", workbook: "Workbook", functions: "Functions", working: "Working" } as const;
type Name = keyof typeof views;
const names = Object.keys(views) as Name[];

/** Each view's code is loaded when the view is first shown. */
const code: Readonly<Record<Name, () => Promise<unknown>>> = {
  run: () => import("../run/runview"),
  safety: () => import("../views/safety"),
  workbook: () => import("../views/workbook"),
  functions: () => import("../views/functions"),
  working: () => import("../views/working"),
};

const draftName = "view";

/** The address of a pane that shows a run and its safety list alone, as a phone does. */
const alone = "#run";
const aloneNames: readonly Name[] = ["run", "safety"];

/** The pane: views over one sheet. A view is made when it is first looked at, and then stays. */
@customElement("pore-app")
export class App extends LitElement {
  @property({ attribute: false }) host!: SheetHost;
  private readonly alone = (location.hash || document.documentElement.dataset.view) === alone;
  @state() private now: Name = this.alone
    ? "run"
    : linkedName()
      ? "functions"
      : (draftOf(draftName, (kept) => names.find((name) => name === kept)) ?? "safety");
  @state() private notice: Notice = { words: "" };
  @state() private warnings: readonly string[] = [];
  /** The welcome, once its code is loaded. */
  @state() private greeting: TemplateResult | undefined;
  /** Whether the code of a view was loaded or failed to load; views not shown yet have no entry. */
  private readonly isThere = new Map<Name, boolean>();

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  private turn = (event: Event): void => {
    const { activeid } = event.target as HTMLElement & { activeid?: string };
    this.turnTo(names.find((one) => `tab-${one}` === activeid));
  };

  /** A view asks to show another one. */
  private turned = ({ detail }: CustomEvent<string>): void => this.turnTo(names.find((one) => one === detail));

  private turnTo(name: Name | undefined): void {
    if (!name || name === this.now) return;
    this.now = name;
    this.notice = { words: "" };
    leave();
    if (!this.alone) keepDraft(draftName, name);
  }

  private listen = ({ detail }: CustomEvent<Notice>): void => {
    this.notice = detail;
  };

  private come(name: Name): void {
    this.isThere.set(name, true);
    this.requestUpdate();
  }

  /** Showing it again tries again. */
  private missing(name: Name): void {
    this.isThere.delete(name);
    this.notice = { words: `${views[name]} could not be loaded. Check the connection, then open it again.`, failed: true };
  }

  private view(name: Name): TemplateResult {
    const { host } = this;
    if (name === "run") return html`<pore-run .host=${host}></pore-run>`;
    if (name === "safety") return html`<pore-safety .host=${host}></pore-safety>`;
    if (name === "workbook") return html`<pore-workbook .host=${host}></pore-workbook>`;
    if (name === "functions") return html`<pore-functions .host=${host}></pore-functions>`;
    return html`<pore-working .host=${host}></pore-working>`;
  }

  private panel = (name: Name): TemplateResult => {
    const here = name === this.now;
    if (here && !this.isThere.has(name)) {
      this.isThere.set(name, false);
      // A custom element created before its code is loaded would get its host too late.
      code[name]().then(
        () => this.come(name),
        () => this.missing(name),
      );
    }
    return html`<div id="panel-${name}" role="tabpanel" aria-labelledby="tab-${name}" ?hidden=${!here}>${this.isThere.get(name) ? this.view(name) : ""}</div>`;
  };

  /** The message covers the foot of the pane: nothing may be hidden under it, above all not the element with the focus. */
  override firstUpdated(): void {
    this.meet();
    const said = this.querySelector<HTMLElement>(".said")!;
    const makeRoom = () => {
      const { offsetHeight, scrollHeight, clientHeight } = said;
      document.documentElement.style.setProperty("--said", `${offsetHeight}px`);
      if (scrollHeight > clientHeight) said.tabIndex = 0;
      else said.removeAttribute("tabindex");
      const focused = document.activeElement;
      const at = focused?.getBoundingClientRect();
      if (focused !== document.body && at && at.bottom > 0 && at.top < innerHeight) focused?.scrollIntoView({ block: "nearest" });
    };
    new ResizeObserver(makeRoom).observe(said);
  }

  /** The host's warnings, and the welcome. */
  private async meet(): Promise<void> {
    await learn(this.host);
    if (this.host.name === "Excel" && !this.alone && isFirstRun())
      this.greeting = await import("../views/welcome").then(
        ({ welcome }) => welcome(this.greeted),
        () => undefined,
      );
    this.warnings = (await this.host.warnings?.()) ?? [];
  }

  private greeted = (): void => {
    welcomed();
    this.greeting = undefined;
    this.querySelector<HTMLElement>("fluent-tab")?.focus();
  };

  override render(): TemplateResult {
    const { words, failed } = this.notice;
    return html`
      <header class="head"><h1>Porewise</h1></header>
      <main @notice=${this.listen} @turn=${this.turned}>
        ${this.warnings.map((warning) => html`<div class="notice failed" role="alert"><p>${warning}</p></div>`)}
        ${this.greeting ?? ""}
        <fluent-tablist class="tabs" aria-label="Views" activeid="tab-${this.now}" @change=${this.turn}>
          ${(this.alone ? aloneNames : names).map((name) => html`<fluent-tab id="tab-${name}" aria-controls="panel-${name}">${views[name]}</fluent-tab>`)}
        </fluent-tablist>
        ${(this.alone ? aloneNames : names).map(this.panel)}
      </main>
      <div class="said" data-failed=${failed ?? false} role="status" aria-live="polite">${words}</div>
      <footer class="quiet">Porewise ${versionText}</footer>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "pore-app": App;
  }
}
