import { retagged } from "../../../shared/xlsx/retag";
import { scan, type Tag } from "../../../shared/xlsx/scan";
import { type Change, changed } from "../../../shared/xlsx/xml";
import { callsOurs } from "../../calls";

/** Rules, lists and columns that call PORE: none of them can be a value, so they go. */

const rules = new Set(["cfRule", "dataValidation"]);
/** What goes with the last that it holds. */
const blocks = new Set(["conditionalFormatting", "conditionalFormattings", "dataValidations", "ext", "extLst"]);

interface Element {
  readonly tag: Tag;
  /** Whether a formula in it calls ours. */
  calls: boolean;
  /** What it still holds beside the cells that it is for, and how much of it went. */
  held: number;
  lost: number;
  words: string;
}

/** A sheet without the rules that call PORE; a block goes with the last of its rules, and one that counts them counts anew. */
export function withoutOurRules(xml: string): { readonly xml: string; readonly rules: number } {
  const open: Element[] = [];
  let changes: Change[] = [];
  let gone = 0;
  let inRule = 0;
  const cut = (from: number, to: number) => {
    changes = [...changes.filter(({ start }) => start < from), { start: from, end: to, text: "" }];
  };
  scan(xml, {
    open(tag) {
      open.push({ tag, calls: false, held: 0, lost: 0, words: "" });
      if (rules.has(tag.local)) inRule++;
      if (inRule && callsOurs(tag.attribute("val") ?? "")) open[open.length - 1].calls = true;
    },
    text(words) {
      if (inRule) open[open.length - 1].words += words;
    },
    close({ local, start, open: end }, to) {
      const one = open.pop()!;
      const around = open.at(-1);
      const calls = one.calls || callsOurs(one.words);
      if (rules.has(local)) inRule--;
      else if (inRule && around) around.calls ||= calls;
      const goes = (rules.has(local) && calls) || (blocks.has(local) && one.lost > 0 && one.held === 0);
      if (goes) {
        cut(start, to);
        if (rules.has(local)) gone++;
      } else if (one.lost && one.tag.attribute("count") !== undefined)
        changes.push(retagged(xml, { start, open: end }, { count: one.held }));
      if (!around) return;
      if (goes) around.lost++;
      else if (local !== "sqref") around.held++;
    },
  });
  return { xml: changed(xml, changes), rules: gone };
}

/** A table fills new rows with the formulas of its columns: with none of ours. */
export function withoutOurColumns(table: string): string {
  const changes: Change[] = [];
  let words = "";
  scan(table, {
    open({ local }) {
      if (local === "calculatedColumnFormula") words = "";
    },
    text(more) {
      words += more;
    },
    close({ local, start }, end) {
      if (local === "calculatedColumnFormula" && callsOurs(words)) changes.push({ start, end, text: "" });
    },
  });
  return changed(table, changes);
}
