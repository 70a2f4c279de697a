import { type Formula, formula } from "../formula";
import type { Page } from "../page";
import type { Ref } from "../place";
import { moment } from "./day";
import { across, type Each, threeLine } from "./three";

/** A start is late after one minute. */
const late = (made: Formula): Formula => formula`${made}-0.0007`;

/** When each load begins a step, marked once that has passed. `put` fills the times in once the cells that they depend on are placed. */
export function startLine(
  page: Page,
  asOf: Ref,
  label: string,
  good: string,
): { readonly refs: Each<Ref>; readonly put: (made: (load: number) => Formula) => void } {
  const { row } = page;
  const refs = threeLine(page, label, () => formula`""`, { format: moment, good });
  const put = (made: (load: number) => Formula) => {
    for (const load of [0, 1, 2]) {
      page.put(row, 1 + load, { formula: made(load), format: moment, look: "result" });
      page.alert(
        "attention",
        refs[load],
        formula`IF(ISNUMBER(${refs[load]}),IF(ISNUMBER(${asOf}),${refs[load]}<${late(formula`${asOf}`)},FALSE),FALSE)`,
      );
    }
    page.put(row, 6, {
      formula: formula`IF(ISNUMBER(${asOf}),IF(COUNTIF(${across(refs)},"<"&${late(formula`${asOf}`)})>0,"a start that has passed is marked. ",""),"")&"${good}"`,
      look: "note",
    });
  };
  return { refs, put };
}
