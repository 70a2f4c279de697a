import { html, type TemplateResult } from "lit";
import type { System } from "../../shared/unittable";
import type { Label } from "../../src/labels/labellines";
import { type LabelSizes, papers, placeOf } from "../../src/labels/sizes";

/** One sheet of labels, each in its place. */
export type LabelSheet = readonly { readonly label: Label; readonly x: number; readonly y: number }[];

export function laidOut(labels: readonly Label[], sizes: LabelSizes): LabelSheet[] {
  const sheets: LabelSheet[number][][] = [];
  for (const [i, label] of labels.entries()) {
    const { sheet, x, y } = placeOf(i, sizes);
    sheets[sheet] ??= [];
    sheets[sheet].push({ label, x, y });
  }
  return sheets;
}

export function paperView(sheets: readonly LabelSheet[], system: System, sizes: LabelSizes): TemplateResult {
  const { unit, width, height } = papers[system];
  const { width: wide, height: high } = sizes;
  // Set as a property: the Content-Security-Policy allows no inline styles.
  const at = (sides: Readonly<Record<string, number>>) =>
    Object.entries(sides)
      .map(([side, length]) => `${side}:${length}${unit}`)
      .join(";");
  return html`<div class="labels-paper" aria-hidden="true">${sheets.map(
    (labels) =>
      html`<div class="labels-sheet" .style=${at({ width, height })}>${labels.map(
        ({ label, x, y }) =>
          html`<div class="label" .style=${at({ left: x, top: y, width: wide, height: high })}>${label.map((line) => html`<p>${line}</p>`)}</div>`,
      )}</div>`,
  )}</div>`;
}

/** The label whose words do not fit, by its first line. */
export const cutIn = (paper: Element): string | undefined =>
  [...paper.querySelectorAll<HTMLElement>(".label")]
    .find(({ scrollHeight, clientHeight, scrollWidth, clientWidth }) => scrollHeight > clientHeight + 1 || scrollWidth > clientWidth + 1)
    ?.querySelector("p")?.textContent ?? undefined;

/** Sets the page size to the paper of the labels; the function returned undoes that. */
export function pageFor(system: System): () => void {
  const { unit, width, height } = papers[system];
  const page = new CSSStyleSheet();
  page.replaceSync(`@page { size: ${width}${unit} ${height}${unit}; margin: 0; }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== page);
  };
}
