import { formula } from "../formula";
import type { Page } from "../page";
import { cellIn, type Ref, refTo, whole } from "../place";
import type { Blanks } from "./blanks";
import type { Shop } from "./shop";

/** What the plan itself says in no words: below the shopping list, two rows each. */
export function notices(
  page: Page,
  shop: Shop,
  blanks: Blanks,
  row: number,
  { discarded, into, done }: Readonly<Record<string, Ref>>,
): void {
  const readyBy = shop.typed("ready by");
  const marked = whole(blanks.of.wrong);
  const late = formula`SUMPRODUCT(ISNUMBER(${whole(into)})*ISERROR(${whole(done)}))`;
  // What is too thick, or lacks a size or its wood, is not planned and says so in the plan.
  const wet = formula`SUMPRODUCT((LEN(${marked})>0)*(LEFT(${marked},6)<>"a size")*(LEFT(${marked},7)<>"no such")*(LEFT(${marked},8)<>"too thic")*(${whole(blanks.of.count)}>0))`;
  const said = [
    formula`IF(${wet}>0,"Rows with a problem on Blanks that are in this plan: "&${wet}&". Dry or weigh them first, or clear their count.","")`,
    formula`IF(SUM(${discarded})>0,"Resin on hand that expires before its load is out and is thrown away: "&ROUND(${discarded},2)&". The plan mixes fresh resin instead.","")`,
    formula`IF(COUNT(${readyBy})=0,"",IF(${late}>0,"Loads done after “ready by” on My Shop: "&${late}&". Start earlier.",""))`,
  ];
  for (const [i, made] of said.entries()) {
    const at = refTo(page.sheet.name, row + 2 * i, 1, 2, 4);
    page.put(at.row, at.column, { formula: made, look: "note" });
    page.sheet.merges.push(at);
    page.alert("bad", cellIn(at, 0), formula`LEN(${cellIn(at, 0)})>0`);
  }
  page.alert("attention", done, formula`AND(ISNUMBER(${into}),ISERROR(${done}))`);
}
