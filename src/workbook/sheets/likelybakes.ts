import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { cellIn, type Ref, whole } from "../place";
import type { Blanks } from "./blanks";
import { planned } from "./loadscolumns";

/** Beside the plan the range of each load's longest bake, by that of the kind on Blanks that bakes as long or next to it. */
export function likelyBakes(page: Page, kit: Kit, header: number, bakes: Ref, { bakesOf: { about, short, long } }: Blanks): void {
  page.put(header - 1, planned, { value: kit.unit("minutes"), look: "unit" });
  page.put(header, planned, { value: "likely bake", look: "heading" });
  const all = whole(about);
  const nearest = formula`LARGE(${all},MIN(COUNT(${all}),COUNTIF(${all},">"&${bakes}*1.0001)+1))`;
  const at = (ends: Ref) => formula`INDEX(${whole(ends)},MATCH(${nearest},${all},0))`;
  const scaled = (ends: Ref) => formula`TEXT(${at(ends)}*${bakes}/${nearest},"0")`;
  const told = formula`IF(ISNUMBER(${at(short)}),${scaled(short)}&IF(ISNUMBER(${at(long)})," to "&${scaled(long)}," or more"),"")`;
  const each = formula`IF(AND(ISNUMBER(${bakes}),COUNT(${all})>0),${told},"")`;
  for (let row = 0; row < bakes.rows; row++) page.put(header + 1 + row, planned, { formula: each, row, look: "words" });
}

/** The same in one line, for paper: there is no room for another column. */
export function sayLikely(page: Page, loads: Ref): void {
  const told = Array.from({ length: loads.rows }, (_, row): Formula => {
    const [load, range] = [cellIn(loads, row), cellIn(loads, row, planned)];
    return formula`IF(LEN(${range})>0,", load "&${load}&": "&${range},"")`;
  }).reduce((all, one) => formula`${all}&${one}`);
  page.say(formula`IF(SUMPRODUCT(LEN(${whole({ ...loads, column: planned })}))=0,"","Likely bakes, min: "&MID(${told},3,999)&".")`, "note");
}
