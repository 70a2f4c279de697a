import type { Model } from "@odoo/o-spreadsheet";
import { catalogue } from "../../src/catalogue";
import { briefly, cautionsOf, first } from "../../src/cautions";

/** Most cells of a sheet that are searched: the strip must not make a person wait. */
const most = 5_000;

const keysOf = new Map<string, readonly string[]>(catalogue.map(({ name, cautions }) => [name, cautions]));

/** The cautions of the functions that a sheet calls. */
function cautionsIn({ getters }: Model): Set<string> {
  const keys = new Set<string>();
  for (const cell of getters.getCells(getters.getActiveSheetId()).slice(0, most)) {
    if (!cell.isFormula) continue;
    for (const [, name] of cell.compiledFormula.normalizedFormula.matchAll(/PORE\.(\w+)/gi))
      for (const key of keysOf.get(name.toUpperCase()) ?? []) keys.add(key);
  }
  return keys;
}

/** Whether a workbook calls our functions anywhere. */
export const holdsOurs = ({ getters }: Model): boolean =>
  getters
    .getSheetIds()
    .some((id) => getters.getCells(id).some((cell) => cell.isFormula && /PORE\./i.test(cell.compiledFormula.normalizedFormula)));

/** Whole sentences that fit the strip; the first always stays. The list has all of them. */
function keepWhole(line: HTMLElement): void {
  const [, ...others] = line.children as unknown as Iterable<HTMLElement>;
  for (const one of others) one.hidden = false;
  const { bottom } = line.getBoundingClientRect();
  for (const one of others.filter((sentence) => sentence.getBoundingClientRect().bottom > bottom + 1)) one.hidden = true;
}

const item = (words: string) => Object.assign(document.createElement("li"), { textContent: words });

/** The strip under the sheet: what to mind with the numbers in sight, on one line, and all of it a press away. */
export class Care {
  private shown = "";
  private looked = "";

  constructor(
    private readonly line: HTMLElement,
    button: HTMLElement,
    private readonly dialog: HTMLDialogElement,
    private readonly here: HTMLElement,
    rest: HTMLElement,
  ) {
    this.say(new Set());
    const all = cautionsOf([...new Set(catalogue.flatMap(({ cautions }) => cautions))]);
    rest.replaceChildren(...all.map(item));
    button.addEventListener("click", () => this.dialog.showModal());
    new ResizeObserver(() => keepWhole(line)).observe(line);
  }

  /** Looks at the sheet shown, where it is another one or holds more or less than before. */
  refresh(model: Model): void {
    const sheetId = model.getters.getActiveSheetId();
    const looked = `${sheetId} ${model.getters.getCells(sheetId).length}`;
    if (looked === this.looked) return;
    this.looked = looked;
    const keys = cautionsIn(model);
    if ([...keys].join() !== this.shown) this.say(keys);
  }

  private say(keys: ReadonlySet<string>): void {
    this.shown = [...keys].join();
    const sentences = briefly(keys).split(/(?<=\.) /);
    this.line.replaceChildren(
      ...sentences.flatMap((words) => [Object.assign(document.createElement("span"), { textContent: words }), " "]),
    );
    keepWhole(this.line);
    const words = keys.size ? cautionsOf([...keys]) : [first];
    this.here.replaceChildren(...words.map(item));
  }
}
