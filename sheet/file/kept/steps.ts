import type { Places } from "../beside/ruleplaces";
import type { Pair } from "./difference";
import { withGroups } from "./groups";
import { withColumns, withRows } from "./lines";
import type { Made } from "./maderules";
import { type RuleChanges, withColors, withTyping } from "./rules";
import { withMerges, withTab, withView } from "./sheetview";

/** A sheet of the file and of the page, and what of it somebody touched. */
interface SheetChange {
  readonly pair: Pair;
  readonly rules: RuleChanges;
  readonly places: Places;
  readonly made: Made;
  /** Index of a rule's differential format (dxf) in the workbook. */
  readonly look: (text: string) => number;
  readonly isRegrouped: boolean;
  /** No lines of a sheet moved: what lies in groups of lines is hidden with them, and the engine counts these otherwise. */
  readonly isStill: boolean;
}

/** What a sheet's part says beside its cells: each takes the part and gives it back as the page has it now. */
const steps: readonly ((xml: string, change: SheetChange) => string)[] = [
  (xml, { pair, rules, places, made, look }) => withColors(xml, pair, rules.colors, places.rules, made.rules, look),
  (xml, { rules, places, made }) => withTyping(xml, rules.typing, places.validations, made.validations),
  (xml, { pair, isRegrouped }) => (isRegrouped ? withGroups(xml, pair) : xml),
  (xml, { pair, isStill }) => withRows(xml, pair, isStill),
  (xml, { pair, isStill }) => withColumns(xml, pair, isStill),
  (xml, { pair }) => withMerges(xml, pair),
  (xml, { pair }) => withView(xml, pair),
  (xml, { pair }) => withTab(xml, pair),
];

export const stepped = (xml: string, change: SheetChange): string => steps.reduce((text, step) => step(text, change), xml);
