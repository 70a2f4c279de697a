import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { longest } from "./kept/name";
import type { Aside, Shelved } from "./kept/store";

const clock = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "medium" });

/** A moment as a list tells it, as this browser's language has it. */
export const when = (moment: number): string => clock.format(moment).replace("\u202f", " ");

const button = (words: string, act: () => void, firm = false): TemplateResult =>
  html`<button class="button button-small ${firm ? "button-firm" : ""}" type="button" @click=${act}>${words}</button>`;

interface Acts {
  readonly open: () => void;
  readonly name: () => void;
  readonly rename: (event: SubmitEvent) => void;
  readonly leaveName: () => void;
  readonly leaveNameByKey: (event: KeyboardEvent) => void;
  readonly copy: () => void;
  readonly download: (moment?: number) => void;
  /** The file as it was opened. */
  readonly original: () => void;
  readonly remove: () => void;
  readonly goBack: (moment: number) => void;
  /** Back to the file as it was opened. */
  readonly goBackToFile: () => void;
}

function versionList([, ...earlier]: readonly number[], { goBack, download, original, goBackToFile }: Acts): TemplateResult {
  return html`<details class="versions"><summary>Earlier versions: ${earlier.length + 1}</summary>
    <ul>${earlier.map(
      (moment) => html`<li><span>${when(moment)}</span>
        ${button("Go back to this", () => goBack(moment))}
        ${button("Download", () => download(moment))}</li>`,
    )}<li><span>The file as it was opened</span>
        ${button("Go back to this", goBackToFile)}
        ${button("Download", original)}</li></ul></details>`;
}

/** A workbook of the list: its name, what can be done with it, its earlier versions. */
export function bookRow({ name, versions }: Shelved, here: boolean, naming: boolean, acts: Acts): TemplateResult {
  const words = html`<strong>${name}</strong>${here ? html` <span class="badge">on the page</span>` : nothing}
    <span class="quiet">changed ${when(versions[0])}</span>`;
  const form = html`<form class="naming" @submit=${acts.rename} @keydown=${acts.leaveNameByKey}>
    <input name="name" aria-label="Name" maxlength=${longest} required .value=${live(name)} />
    <button class="button button-small button-firm" type="submit">Rename</button>
    ${button("Cancel", acts.leaveName)}</form>`;
  const buttons = html`<div class="book-buttons">
    ${here ? nothing : button("Open", acts.open, true)}
    ${button("Rename", acts.name)}
    ${button("Copy", acts.copy)}
    ${button("Download", () => acts.download())}
    ${button("Delete", acts.remove)}
  </div>`;
  return html`<li class="book" data-book=${name}>
    <div class="book-words">${naming ? form : words}</div>
    ${naming ? nothing : buttons}
    ${versionList(versions, acts)}</li>`;
}

interface AsideActs {
  readonly download: (one: Aside) => void;
  readonly remove: (one: Aside) => void;
}

/** What could not be read and stands aside as it was found. */
export function asideList(aside: readonly Aside[], { download, remove }: AsideActs): TemplateResult | typeof nothing {
  if (!aside.length) return nothing;
  return html`<h3>Set aside because it could not be read</h3>
    <ul class="books">${aside.map(
      (
        one,
      ) => html`<li class="book"><div class="book-words"><strong>${one.name}</strong> <span class="quiet">as of ${when(one.moment)}</span></div>
      <div class="book-buttons">${button("Download as it is", () => download(one))} ${button("Delete", () => remove(one))}</div></li>`,
    )}</ul>`;
}
