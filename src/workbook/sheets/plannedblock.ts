import { type Formula, formula } from "../formula";
import type { Page } from "../page";
import { between, type Ref, refTo } from "../place";
import type { Columns } from "../sheettable";

/** The rows as PLAN takes them, rounded to what a bench can tell, so that one program's last digit is no change to another. */
export function plannedBlock(page: Page, of: Columns, column: number): { block: Ref; count: Ref; bake: Ref } {
  const rows = of.kind.rows;
  const at = (i: number) => refTo(page.sheet.name, of.kind.row, column + i, rows);
  const text = (ref: Ref) => formula`IF(${ref}="","",${ref})`;
  const made: [title: string, each: Formula][] = [
    ["as planned", text(of.kind)],
    ["count", formula`IF(${of.inPlan}="yes",${of.count},0)`],
    ["thickness", text(of.thickness)],
    ["width", text(of.width)],
    ["length", text(of.length)],
    ["wood", formula`IF(IF(${of.named}="",FALSE,ISNUMBER(${of.gravity})),ROUND(${of.gravity},6),IF(${of.wood}="","",${of.wood}))`],
    ["color", text(of.color)],
    ["fullness", formula`IF(ISNUMBER(${of.fullness}),ROUND(${of.fullness},6),"")`],
    ["bake", formula`IF(AND(${of.inPlan}="yes",ISNUMBER(${of.minutes})),${of.minutes},"")`],
  ];
  for (const [i, [title, each]] of made.entries()) {
    page.put(of.kind.row - 1, column + i, { value: title, look: "heading" });
    for (let row = 0; row < rows; row++) page.put(of.kind.row + row, column + i, { formula: each, row, look: "note" });
  }
  return { block: between(at(0), at(made.length - 2)), count: at(1), bake: at(made.length - 1) };
}
