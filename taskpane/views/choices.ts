import { html, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import type { Choice } from "../../src/workbook/choice";

interface Option {
  readonly words: string;
  readonly more: string;
  readonly choice: Partial<Choice>;
}

const groups: readonly (readonly [title: string, name: string, options: readonly Option[]])[] = [
  [
    "Formulas",
    "edition",
    [
      { words: "With Porewise", more: "keeps calculating, needs the add-in", choice: { edition: "live" } },
      {
        words: "Without",
        more: "built-in formulas, opens anywhere; what they cannot work out is fixed and marked",
        choice: { edition: "plain" },
      },
    ],
  ],
  [
    "Units",
    "units",
    [
      { words: "US", more: "inches, quarts, °F", choice: { units: "us" } },
      { words: "SI", more: "millimeters, liters, °C", choice: { units: "si" } },
    ],
  ],
  [
    "Filled with",
    "filling",
    [
      { words: "Sample shop", more: "made up, with a hundred blanks", choice: { empty: false } },
      { words: "Nothing", more: "ready for your own", choice: { empty: true } },
    ],
  ],
];

const isChosen = (choice: Choice, part: Partial<Choice>) =>
  Object.entries(part).every(([key, value]) => choice[key as keyof Choice] === value);

/** What a workbook to start from may be: its formulas, its units, and what fills it. */
export const choices = (chosen: Choice, choose: (part: Partial<Choice>) => void): TemplateResult[] =>
  groups.map(
    ([title, name, options]) => html`<fieldset class="choices">
      <legend>${title}</legend>
      ${options.map(
        (
          { words, more, choice },
          i,
        ) => html`<label><input type="radio" id="${name}-${i}" name=${name} .checked=${live(isChosen(chosen, choice))} @change=${() => choose(choice)} />
          <span>${words}<span class="why">${more}</span></span></label>`,
      )}
    </fieldset>`,
  );
