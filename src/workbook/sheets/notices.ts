import { type Formula, formula } from "../formula";
import type { Page } from "../page";
import { type Ref, refTo, whole } from "../place";
import { ownReason } from "../verdict";
import type { Blanks } from "./blanks";
import type { Shop } from "./shop";

interface Parts {
  readonly discarded: Ref;
  readonly into: Ref;
  readonly done: Ref;
  /** Blanks as it was when the plan was made. */
  readonly planned: Ref;
}

/** Notes below the plan: what is left out, thrown away or late, and whether the plan is out of date. */
export function notices(page: Page, shop: Shop, blanks: Blanks, { discarded, into, done, planned }: Parts): void {
  const readyBy = shop.typed("ready by");
  const { rows, pieces } = blanks.leftOut;
  const late = formula`SUMPRODUCT(ISNUMBER(${whole(into)})*ISERROR(${whole(done)}))`;
  const changed = formula`SUMPRODUCT((${whole(planned)}<>${whole(blanks.planned)})*1)`;
  const said: readonly Formula[] = [
    formula`IF(${rows}>0,"Left out of the plan: "&${rows}&IF(${rows}=1," row"," rows")&" of Blanks, pieces: "&${pieces}&". Each says why in its row there.","")`,
    formula`IF(SUM(${discarded})>0,"Resin on hand that expires before its load is out and is thrown away: "&ROUND(${discarded},2)&". The plan mixes fresh resin instead.","")`,
    formula`IF(COUNT(${readyBy})=0,"",IF(${late}>0,"Loads done after “ready by” on My Shop: "&${late}&". Start earlier.",""))`,
    formula`IF(${changed}>0,"Blanks has changed since this plan was made. Make the plan again with the add-in or on the page.","")`,
  ];
  for (const made of said) {
    const at = page.say(ownReason(made), "note");
    page.alert("attention", at, formula`LEN(${at})>0`);
  }
  page.put(page.row, 0, {
    formula: formula`""`,
    without:
      "This plan is a fixed value, worked out with the add-in for Blanks and My Shop as they came in this file. It does not follow your changes.",
    look: "note",
  });
  page.sheet.merges.push(refTo(page.sheet.name, page.row, 0, 1, page.sheet.print.columns!));
  page.row++;
  page.alert("attention", done, formula`AND(ISNUMBER(${into}),ISERROR(${done}))`);
}
