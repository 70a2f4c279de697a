import { cautionsOf } from "../../cautions";
import { plan } from "../../plan/plan";
import { shoppinglist } from "../../plan/shoppinglist";
import { ask, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { between, cellIn, type Ref, refTo } from "../place";
import { momentExample } from "../usdates";
import { failed } from "../verdict";
import type { Blanks } from "./blanks";
import { demoDay, moment } from "./day";
import { unreadable } from "./judged";
import { likelyBakes, sayLikely } from "./likelybakes";
import { loadsChart } from "./loadschart";
import { formatsOf, planned, serving, unitsOver, widthsOf } from "./loadscolumns";
import { tellAnswer, tellReasons } from "./loadssaid";
import { notices } from "./notices";
import { type OnHand, resinTable } from "./resintable";
import type { Shop } from "./shop";
import { lineNames, listRows, shoppingLines } from "./shoppinglines";

export interface Loads {
  readonly page: Page;
  readonly start: Ref;
  /** Quantity on a line of the shopping list. */
  readonly need: (name: string) => Ref;
  /** The first cell of the list as the function gives it: an error where there is no plan, nothing where there are no pieces. */
  readonly head: Ref;
}

/** The plan over all blanks, for the wall, with what it takes. */
export function loadsSheet(kit: Kit, shop: Shop, blanks: Blanks, onHand: OnHand): Loads {
  const page = new Page(
    "Loads",
    "When to soak and bake everything on Blanks, with one person working the hours on My Shop, and what it takes.",
    widthsOf(kit),
    {
      landscape: true,
      columns: planned,
      narrow: true,
    },
  );
  const { name } = page.sheet;
  page.open("Loads");
  const answer = page.row - 1;
  page.put(page.row, 0, { value: "start", look: "label" });
  const start = page.across(page.row, 1, 2, {
    value: kit.demo ? demoDay + 2 + 8 / 24 : undefined,
    look: "input",
    format: moment,
    allowed: { date: true },
    hint: "Day and hour to start. Blank: the plan counts back from “ready by” on My Shop.",
  });
  const undated = formula`AND(${start}="",${shop.typed("ready by")}="")`;
  const isWrong = unreadable(page, "ready by", start, { row: page.row, column: serving.blanks });
  const due = `type a day and hour, such as ${momentExample(kit.system)}`;
  page.put(page.row, 3, {
    formula: formula`IF(${isWrong},"not a day and hour: ${due}",IF(${undated},"${due}, or “ready by” on My Shop","day and hour to start"))`,
    look: "unit",
  });
  page.alert("bad", start, isWrong);
  page.skip();
  const reasons = page.row++;
  unitsOver(page, kit);
  const header = page.row;
  page.sheet.frozen = { rows: header + 1, columns: 0 };
  const room = (kit.demo ? 11 : 25) + 1;
  const resinRows = 4;
  // Title, lines of words, the shopping list beside the chart, then the resin.
  const below = header + room + 1;
  const listTop = below + 7;
  const resinsAt = listTop + lineNames.length + 5;
  const resins = refTo(name, resinsAt + 2, 1, resinRows, 4);
  const given = { pieces: blanks.planned, chamber: shop.chamber, height: shop.height, resins, start };
  const made = formula`IF(${undated},"",${ask(plan, given)})`;
  const all = page.block(made, refTo(name, header, 0, room, planned), formatsOf(plan, kit), { look: "words" });
  const column = (index: number) => refTo(name, header + 1, index, room - 1);
  const isFailed = failed(column(12));
  // One error is enough for the row: its other fourteen cells show nothing.
  page.alert("unseen", between(column(2), column(planned - 1)), formula`ISERROR(${column(1)})`);
  page.alert("bad", { ...all, row: header + 1, rows: room - 1 }, isFailed);
  likelyBakes(page, kit, header, column(15), blanks);

  const list = refTo(name, header + 1, serving.list, listRows, 3);
  page.put(header, serving.list, { value: "shopping list, by color", look: "heading" });
  page.block(ask(shoppinglist, given), list, ["General", "0.00", "General"], { headed: false, look: "note" });
  const copy = refTo(name, header + 1, serving.blanks, blanks.planned.rows, blanks.planned.columns);
  page.put(header, serving.blanks, { value: "Blanks, as planned", look: "heading" });
  for (let row = 0; row < copy.rows; row++)
    for (let right = 0; right < copy.columns; right++)
      page.put(copy.row + row, copy.column + right, {
        formula: formula`${cellIn(blanks.planned, row, right)}`,
        without: true,
        look: "note",
      });

  page.row = below;
  const need = (line: string) => refTo(name, listTop + lineNames.indexOf(line), 2);
  notices(page, shop, blanks, { discarded: need("resin discarded"), into: column(12), done: column(16), planned: copy });
  sayLikely(page, column(0));
  page.row = listTop - 1;
  // Page 1 is the plan, for the wall; page 2 the shopping list, for the pocket.
  page.sheet.print = { ...page.sheet.print, newPage: page.row };
  shoppingLines(page, list);
  page.alert(
    "attention",
    between(cellIn(need("not planned"), 0, -1), need("not planned")),
    formula`IF(ISNUMBER(${need("not planned")}),${need("not planned")}>0,FALSE)`,
  );
  loadsChart(
    page,
    kit,
    { vacuum: shop.holds("vacuum hours"), column, at: { row: listTop - 1, column: 5, rows: lineNames.length + 3, columns: 12 } },
    serving.chart,
    header,
  );
  tellReasons(page, reasons, list);
  page.row = resinsAt;
  resinTable(page, kit, resinRows, onHand, list, blanks, serving.list);
  page.skip();
  page.cautions(cautionsOf([...plan.cautions, "wet wood"]));
  tellAnswer(page, kit, answer, {
    undated,
    loads: need("loads"),
    pulls: need("pulls"),
    mix: need("resin to mix"),
    done: need("earliest ready"),
    counts: column(3),
  });
  return { page, start, need, head: cellIn(list, 0) };
}
