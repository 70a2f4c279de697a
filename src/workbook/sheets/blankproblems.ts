import { type Formula, formula } from "../formula";
import type { Columns } from "../sheettable";
import type { Shop } from "./shop";
import { tooLarge, type Vessel } from "./vessel";

/** About the lightest balsa. */
const lightest = 0.08;

export const brokenCount = "count is not a whole number";

/** The problem of a row in plain words, for paper and phones, where an error shows no message. */
export const wrongWith = (
  { kind, count, thickness, width, length, wood, named, weight, dryWeight, moisture, gravity }: Columns,
  shop: Shop,
  tub: Vessel,
): Formula =>
  formula`IF(AND(${kind}="",${wood}=""),"",IF(COUNT(${thickness},${width},${length})<3,"a size is missing, or is no plain number",IF(IF(ISNUMBER(${count}),OR(${count}<0,${count}<>INT(${count})),LEN(${count})>0),"${brokenCount}",IF(COUNT(${weight},${dryWeight})<(LEN(${weight})>0)+(LEN(${dryWeight})>0),"a weight is not a plain number: type 21, not 21 g",IF(${named}="",IF(${wood}="","the wood is missing: pick one","no such wood on the sheet Woods"),IF(AND(LEN(${weight})>0,SUM(${dryWeight})<=0),"oven-dry is missing: weigh it dry",IF(AND(SUM(${weight})<=0,LEN(${dryWeight})>0),"its weight now is missing",IF(AND(COUNT(${weight},${dryWeight})=2,${weight}<${dryWeight}),"lighter than when dry: weigh again",IF(AND(COUNT(${weight},${dryWeight})=2,${weight}>1.3*${dryWeight}),"too wet to take resin: dry it first",IF(IF(ISNUMBER(${moisture}),${moisture}>${shop.holds("dry enough")},FALSE),"dry it first",IF(IF(ISNUMBER(${gravity}),${gravity}<${lightest},TRUE),"weight and sizes fit no wood: check",IF(MIN(${thickness},${width},${length})>${shop.holds("thickest")}*1.000000001,"too thick to bake by calculation",${tooLarge({ thickness, width, length }, shop, tub)}))))))))))))`;

/** Whether a row is in the plan, and if not, why. */
export const planWords = ({ kind, count, wood, wrong, grade }: Columns): Formula =>
  formula`IF(AND(${kind}="",${wood}=""),"",IF(LEN(${wrong})>0,"left out",IF(IF(ISNUMBER(${count}),${count}>0,FALSE),IF(ISERROR(${grade}),"left out",IF(${grade}="unsuited","left out: unsuited",IF(${grade}="dry first","left out: dry it first","yes"))),"no count")))`;
