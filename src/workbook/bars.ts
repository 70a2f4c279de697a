import { type Formula, formula } from "./formula";
import type { Ref } from "./place";

/** Characters of the longest bar: few enough to fit the column in every program's font. */
const longest = 10;

/** A bar of full blocks: every program shows it, it prints, and needs no color. Nothing where there is no number. */
export const bar = (value: Ref | Formula, most: Ref | Formula | number, length = longest): Formula =>
  formula`IF(ISNUMBER(${value}),IF(${value}>0,LEFT("${"█".repeat(length)}",MAX(1,MIN(${length},ROUND(${length}*${value}/${most},0)))),""),"")`;
