import { html, type TemplateResult } from "lit";
import type { Words } from "../../src/checklist/list";
import { longest, type Stage, stageNames, stages } from "../../src/checklist/schema";

export const blankWords = (stage: Stage): Words => ({ stage, text: "", why: "" });

interface Handlers {
  readonly typed: (words: Words) => void;
  readonly done: (words: Words) => void;
  readonly cancel: () => void;
  /** Text of the button that cancels. */
  readonly leave: string;
  /** Buttons that an item has once it exists. */
  readonly steps: unknown;
}

/** The words of an item, to type or to change. */
export function wordsForm(words: Words, { typed, done, cancel, leave, steps }: Handlers): TemplateResult {
  const set = (change: Partial<Words>) => typed({ ...words, ...change });
  const value = (event: Event) => (event.target as HTMLInputElement).value;
  const submit = (event: Event) => {
    event.preventDefault();
    done(words);
  };
  const byKey = (event: KeyboardEvent) => {
    if (event.key === "Escape") {
      event.stopPropagation();
      cancel();
    } else if (event.key === "Enter" && event.target instanceof HTMLTextAreaElement && !event.isComposing) {
      // The text is one line, though it may wrap: Enter does not break it.
      submit(event);
    }
  };
  return html`<form class="sheet" @submit=${submit} @keydown=${byKey}>
    <label for="item-text">What to check</label>
    <textarea id="item-text" rows="2" maxlength=${longest} .value=${words.text} @input=${(e: Event) => set({ text: value(e) })}></textarea>
    <label for="item-why">Why (one line)</label>
    <textarea id="item-why" rows="2" maxlength=${longest} .value=${words.why} @input=${(e: Event) => set({ why: value(e) })}></textarea>
    <label for="item-stage">When</label>
    <select id="item-stage" .value=${words.stage} @change=${(e: Event) => set({ stage: value(e) as Stage })}>
      ${stageNames.map((stage) => html`<option value=${stage} ?selected=${stage === words.stage}>${stages[stage]}</option>`)}
    </select>
    <div class="buttons">
      <fluent-button type="submit" appearance="primary">Keep</fluent-button>
      <fluent-button @click=${cancel}>${leave}</fluent-button>
      ${steps}
    </div>
  </form>`;
}
