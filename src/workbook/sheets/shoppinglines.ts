import { formula } from "../formula";
import type { Page } from "../page";
import { key, type Ref, refTo, whole } from "../place";

/** Lines of the shopping list, and the places each is told to. */
const lines: Readonly<Record<string, string>> = {
  "resin to mix": "0.00",
  packets: "0",
  dye: "0.00",
  foil: "0.0",
  "ballast of the heaviest load": "0",
  loads: "0",
  pulls: "0",
  "chamber hours": "0.0",
  "oven hours": "0.0",
  days: "0",
  "resin left": "0.00",
  "resin discarded": "0.00",
  "earliest ready": "mm-dd hh:mm",
  "not planned": "0",
};
export const lineNames = Object.keys(lines);
/** Those that stand once for each color. */
const perColor = 5;
/** Colors that the list has room for. */
const colors = 4;
/** Rows of the list that they fill. */
export const listRows = lineNames.length + perColor * (colors - 1);

/** The list with its sums over all colors; each color by itself stands below. */
export function shoppingLines(page: Page, list: Ref): void {
  const [names, quantities, units] = [0, 1, 2].map((right) => whole(refTo(list.sheet, list.row, list.column + right, list.rows)));
  page.put(page.row, 1, { value: "shopping list", look: "heading" });
  page.put(page.row, 2, { value: "need", look: "heading", format: "0.00" });
  page.put(page.row, 3, { value: "unit", look: "heading" });
  page.row++;
  for (const name of lineNames) {
    page.put(page.row, 1, { value: name, look: "words" });
    const found = formula`MATCH("${name}*",${names},0)`;
    const value =
      name === "earliest ready"
        ? formula`INDEX(${quantities},${found})`
        : formula`SUMIF(${names},"${name}",${quantities})+SUMIF(${names},"${name}, *",${quantities})`;
    page.put(page.row, 2, { formula: formula`IF(ISERROR(${found}),"",${value})`, look: "words", format: lines[name] });
    const unit = name === "not planned" ? { value: "rows" } : { formula: formula`IF(ISERROR(${found}),"",INDEX(${units},${found})&"")` };
    // A day with its hour has no unit, and takes that place too.
    if (name === "earliest ready") page.across(page.row, 2, 3, page.sheet.cells.get(key(page.row, 2))!);
    else page.put(page.row, 3, { ...unit, look: "words" });
    page.row++;
  }
}
