import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, whole } from "../place";
import type { Columns } from "../sheettable";
import { brokenCount } from "./blankproblems";

/** Rows with an error are passed over: it matches no condition. */
export function summaryLines(page: Page, row: number, of: Columns, planned: Ref, kit: Kit) {
  const all = (ref: Ref) => whole(ref);
  // A count that is no whole number is left out until it is corrected.
  const broken = formula`SUMIF(${all(of.wrong)},"${brokenCount}",${all(of.count)})`;
  const out = formula`SUMPRODUCT((LEFT(${all(of.inPlan)},4)="left")*1)`;
  const lines: [string, Formula, string, string][] = [
    ["pieces", formula`SUM(${all(of.count)})-${broken}`, "0", ""],
    ["in the plan", formula`SUM(${all(planned)})`, "0", "pieces: the sheet Loads plans these"],
    ["left out, rows", out, "0", "each says why in its row"],
    ["left out, pieces", formula`SUMIF(${all(of.inPlan)},"left*",${all(of.count)})-${broken}`, "0", ""],
    ["resin taken up", formula`SUMIF(${all(of.all)},">0")`, "0.00", kit.unit("fluid")],
  ];
  const [, , rows, pieces] = lines.map(([label, made, format, unit], i) => {
    page.put(row + i, 0, { value: label, look: "label" });
    if (unit) page.put(row + i, 2, { value: unit, look: "unit" });
    return page.put(row + i, 1, { formula: made, format, look: "figure" });
  });
  return { rows, pieces };
}
