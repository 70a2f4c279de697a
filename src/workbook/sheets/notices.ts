import { type Formula, formula } from "../formula";
import type { Page } from "../page";
import { type Ref, refTo, whole } from "../place";
import type { Blanks } from "./blanks";
import type { Shop } from "./shop";

interface Parts {
  readonly discarded: Ref;
  readonly load: Ref;
  readonly into: Ref;
  readonly done: Ref;
  /** Blanks as it was when the plan was made. */
  readonly planned: Ref;
}

/** What the plan itself says in no words, a line each below it: what is left out, poured away, late, or no longer so. */
export function notices(page: Page, shop: Shop, blanks: Blanks, { discarded, load, into, done, planned }: Parts): void {
  const readyBy = shop.typed("ready by");
  const { rows, pieces } = blanks.leftOut;
  const late = formula`SUMPRODUCT(ISNUMBER(${whole(into)})*ISERROR(${whole(done)}))`;
  const failed = formula`SUMPRODUCT(ISERROR(${whole(into)})*ISTEXT(${whole(load)}))`;
  const changed = formula`SUMPRODUCT((${whole(planned)}<>${whole(blanks.pieces)})*1)`;
  const said: readonly Formula[] = [
    formula`IF(${rows}>0,"Left out of the plan: "&${rows}&IF(${rows}=1," row"," rows")&" of Blanks, pieces: "&${pieces}&". Each says why in its row there.","")`,
    formula`IF(${failed}>0,"Could not be planned, rows: "&${failed}&". Point at the #N/A beside the name: it says why.","")`,
    formula`IF(SUM(${discarded})>0,"Resin on hand expires before its load is out and is poured away: "&ROUND(${discarded},2)&". A fresh batch is begun.","")`,
    formula`IF(COUNT(${readyBy})=0,"",IF(${late}>0,"Late, loads done after “ready by” on My Shop: "&${late}&". Begin earlier.",""))`,
    formula`IF(${changed}>0,"Blanks is no longer what was planned here. Make this plan anew with the add-in or on the page.","")`,
  ];
  for (const made of said) {
    const at = page.say(made, "note");
    page.alert("attention", at, formula`LEN(${at})>0`);
  }
  page.put(page.row, 0, {
    formula: formula`""`,
    without:
      "Fixed plan: it was worked out with the add-in, for Blanks and My Shop as they came in this file. It does not change with them.",
    look: "note",
  });
  page.sheet.merges.push(refTo(page.sheet.name, page.row, 0, 1, 17));
  page.row++;
  page.alert("attention", done, formula`AND(ISNUMBER(${into}),ISERROR(${done}))`);
}
