import { html, nothing, type TemplateResult } from "lit";
import { type Entry, type Field, underField } from "../../shared/form";

interface Handlers {
  readonly typed: (text: string) => void;
  /** Given where there is a sheet beside the pane. */
  readonly useSelection?: () => void;
  readonly clear: () => void;
}

const sizeWords = (entry: Entry & { readonly reference: string }): string => {
  const count = entry.cells.flat().length;
  return count === 1 ? "one cell" : `${count} cells`;
};

/** As many rows as there are lines, and one more. */
const linesIn = (entry: Entry | undefined) => Math.min(8, (entry?.typed ?? "").split("\n").length + 1);

function control(field: Field, entry: Entry | undefined, { typed }: Handlers, about: string, bad: boolean): TemplateResult {
  const id = `field-${field.name}`;
  const text = entry?.typed ?? "";
  const input = (event: Event) => typed((event.target as HTMLInputElement).value);
  if (field.control === "choice")
    return html`<select id=${id} aria-describedby=${about} aria-invalid=${bad} @change=${input}>
      <option value="" ?selected=${!text}>${field.required ? "Choose" : "Not given"}</option>
      ${field.choices.map((word) => html`<option value=${word} ?selected=${word === text}>${word}</option>`)}
    </select>`;
  if (field.control === "lines")
    return html`<textarea id=${id} rows=${linesIn(entry)} spellcheck="false" aria-describedby=${about} aria-invalid=${bad}
      aria-required=${field.required} .value=${text} @input=${input}></textarea>`;
  return html`<input id=${id} autocomplete="off" spellcheck="false" aria-describedby=${about} aria-invalid=${bad}
    aria-required=${field.required} .value=${text} @input=${input} />`;
}

/** A field with its unit, hints, and the words under it where it is at fault. */
export function fieldRow(field: Field, entry: Entry | undefined, trouble: string | undefined, handlers: Handlers): TemplateResult {
  const { name, label, unit, hints, required } = field;
  const hintId = `hint-${name}`;
  const troubleId = `trouble-${name}`;
  const about = trouble ? `${hintId} ${troubleId}` : hintId;
  const heading = html`<span class="label-words">${label}</span>${required ? nothing : html`<span class="may"> (optional)</span>`}`;
  return html`<div class="field" data-fault=${trouble !== undefined}>
    ${
      entry?.reference === undefined
        ? html`<label for="field-${name}">${heading}</label>
          <div class="typed">${control(field, entry, handlers, about, trouble !== undefined)}${unit ? html`<span class="unit">${unit}</span>` : nothing}</div>`
        : html`<p class="label" id="label-${name}">${heading}</p>
          <div class="typed"><span class="from" role="note">from ${entry.reference}, ${sizeWords(entry)}</span>
          <button class="plain" type="button" id="field-${name}" aria-describedby="label-${name} ${about}" @click=${handlers.clear}>Type it instead</button></div>`
    }
    ${trouble === undefined ? nothing : html`<p class="fault" id=${troubleId}>${underField(field, trouble)}</p>`}
    <p class="hint" id=${hintId}>${hints.filter((hint) => hint !== "optional").join("; ")}</p>
    ${
      handlers.useSelection
        ? html`<button class="plain" type="button" id="use-${name}" @click=${handlers.useSelection}>Use selected cells<span class="unseen"> for ${label}</span></button>`
        : nothing
    }
  </div>`;
}
