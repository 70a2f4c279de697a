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
      { words: "With Porewise", more: "calculates anew in a sheet that has the add-in", choice: { edition: "live" } },
      {
        words: "Without",
        more: "plain formulas, opens anywhere; what has no plain formula is fixed and marked",
        choice: { edition: "plain" },
      },
    ],
  ],
  [
    "Units",
    "units",
    [
      { words: "US", more: "inches, quarts, °F", choice: { units: "us" } },
      { words: "SI", more: "millimetres, litres, °C", choice: { units: "si" } },
    ],
  ],
  [
    "Filled with",
    "filling",
    [
      { words: "An invented shop", more: "a hundred blanks to play with", choice: { empty: false } },
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
