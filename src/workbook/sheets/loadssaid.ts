import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, refTo, whole } from "../place";

/** The plan in one sentence, for the top of the sheet. */
export function tellAnswer(
  page: Page,
  kit: Kit,
  row: number,
  { undated, loads, pulls, mix, done, counts }: { undated: Formula } & Readonly<Record<"loads" | "pulls" | "mix" | "done" | "counts", Ref>>,
): void {
  const blanks = formula`SUMIF(${whole(counts)},">0")`;
  const several = (many: Formula | Ref, one: string, more: string) => formula`${many}&IF(${many}=1," ${one}"," ${more}")`;
  // Not every program spells AM and PM in TEXT.
  const minute = formula`ROUND(MOD(${done},1)*1440,0)`;
  const twelve = formula`(MOD(INT(${minute}/60)+11,12)+1)&":"&TEXT(MOD(${minute},60),"00")&IF(MOD(${minute},1440)<720," AM"," PM")`;
  const hour = kit.by(twelve, formula`TEXT(${done},"hh:mm")`);
  const told = formula`${several(blanks, "blank", "blanks")}&": "&${several(loads, "load", "loads")}&IF(${pulls}<${loads}," in "&${several(pulls, "pull", "pulls")},"")&", done "&TEXT(${done},"ddd")&" "&${hour}&", mix "&ROUND(${mix},2)&" ${kit.unit("fluid")}"`;
  const made = formula`IF(${undated},"Type a start below to see the plan.",IF(IF(ISNUMBER(${loads}),${loads}>0,FALSE),${told},IF(ISNUMBER(${loads}),"Nothing to plan: see Blanks.","No plan: see the lines above.")))`;
  page.row = row;
  page.say(made, "big");
}

/** Which rows cannot be planned, and why: the words that their errors keep for whoever points at them. */
export function tellReasons(page: Page, row: number, list: Ref): void {
  const [names, quantities, units] = [0, 1, 2].map((right) => whole(refTo(list.sheet, list.row, list.column + right, list.rows)));
  const found = formula`MATCH("not planned",${names},0)`;
  const many = formula`INDEX(${quantities},${found})`;
  page.row = row;
  const said = page.say(
    formula`IF(ISERROR(${found}),"",IF(${many}>0,"Cannot be planned: "&${many}&IF(${many}=1," row"," rows")&" of Blanks. "&INDEX(${units},${found}),""))`,
    "note",
  );
  page.alert("bad", said, formula`LEN(${said})>0`);
}
