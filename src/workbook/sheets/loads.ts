import type { Contract } from "../../../shared/contract";
import { cautionsOf } from "../../cautions";
import { plan } from "../../plan/plan";
import { shoppinglist } from "../../plan/shoppinglist";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { failed, Page } from "../page";
import { between, cellIn, key, type Ref, refTo, whole } from "../place";
import { momentExample } from "../usdates";
import type { Blanks } from "./blanks";
import { briefDay, day, demoDay, moment } from "./day";
import { unreadable } from "./judged";
import { loadsChart } from "./loadschart";
import { notices } from "./notices";
import { type OnHand, resinTable } from "./resintable";
import type { Shop } from "./shop";

export interface Loads {
  readonly page: Page;
  readonly start: Ref;
  /** Quantity on a line of the shopping list. */
  readonly need: (name: string) => Ref;
  /** The first cell of the list as the function gives it: an error where there is no plan, nothing where there are no pieces. */
  readonly head: Ref;
}

/** The first moment of a load has its date; what follows within days has its day of the week. */
const brief = "ddd mm-dd hh:mm";
const later = "ddd hh:mm";

/** Lines of the shopping list, and the places each is told to. */
const lines: Readonly<Record<string, string>> = {
  "resin to mix": "0.00",
  packets: "0",
  dye: "0.00",
  foil: "0.0",
  "ballast of the heaviest load": "0",
  loads: "0",
  pulls: "0",
  "chamber hours": "0.0",
  "oven hours": "0.0",
  days: "0",
  "resin left": "0.00",
  "resin discarded": "0.00",
  "earliest ready": "mm-dd hh:mm",
  "not planned": "0",
};
const lineNames = Object.keys(lines);
/** Those that stand once for each color. */
const perColor = 5;
/** Colors that the list has room for. */
const colors = 4;

/** As the contract has them, days as short as they are clear, moments with their day of the week and without their year. */
const formatsOf = ({ format }: Contract, kit: Kit): string[] =>
  Object.entries(format as Readonly<Record<string, string>>).map(([name, own]) =>
    own === day ? briefDay(kit) : own !== moment ? own : name === "in" ? brief : later,
  );

/** Columns of the plan, which go to paper; beyond them the likely bake, and then what only serves. */
const planned = 17;
const serving = { chart: planned + 1, list: 27, blanks: 31 };

/** All that is printed fits one page across and a screen of 1280 pixels; a clock of twelve hours takes more room, and leaves less for the pieces. */
const widthsOf = (kit: Kit): number[] => {
  const clock = kit.by(13.1, 10);
  const fluid = kit.by(6.2, 6.5);
  const resin = [fluid, fluid, fluid, fluid, 8.4, 5];
  const load = [
    5.2,
    kit.by(14.6, 30),
    5.8,
    kit.by(7.6, 9.7),
    6.8,
    ...resin,
    kit.by(7.6, 9.7),
    kit.by(16.6, 14.5),
    clock,
    clock,
    8.4,
    clock,
    10,
  ];
  const chart = [8, 15, 8, 8, 8, 8, 3, 3, 3];
  const list = [27, 15, 8, 3];
  return [...load, ...chart, ...list, 21, 8, 9, 8, 8, 9, 8, 9];
};

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
  // Its name, and one code that tells the reason: fourteen more of them say nothing.
  page.alert("unseen", between(column(2), column(planned - 1)), formula`ISERROR(${column(1)})`);
  page.alert("bad", { ...all, row: header + 1, rows: room - 1 }, isFailed);
  likelyBakes(page, kit, header, column(15), blanks);

  const rows = lineNames.length + perColor * (colors - 1);
  const list = refTo(name, header + 1, serving.list, rows, 3);
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
  // The plan on one page, and on the other what it takes: for the wall, and for the pocket.
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

/** The plan in one sentence, before all else. */
function tellAnswer(
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
function tellReasons(page: Page, row: number, list: Ref): void {
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

/** The list with its sums over all colors; each color by itself stands below. */
function shoppingLines(page: Page, list: Ref): void {
  const [names, quantities, units] = [0, 1, 2].map((right) => whole(refTo(list.sheet, list.row, list.column + right, list.rows)));
  page.put(page.row, 1, { value: "shopping list", look: "heading" });
  page.put(page.row, 2, { value: "need", look: "heading", format: "0.00" });
  page.put(page.row, 3, { value: "unit", look: "heading" });
  page.row++;
  for (const name of lineNames) {
    page.put(page.row, 1, { value: name, look: "words" });
    const found = formula`MATCH("${name}*",${names},0)`;
    const value =
      name === "earliest ready"
        ? formula`INDEX(${quantities},${found})`
        : formula`SUMIF(${names},"${name}",${quantities})+SUMIF(${names},"${name}, *",${quantities})`;
    page.put(page.row, 2, { formula: formula`IF(ISERROR(${found}),"",${value})`, look: "words", format: lines[name] });
    const unit = name === "not planned" ? { value: "rows" } : { formula: formula`IF(ISERROR(${found}),"",INDEX(${units},${found})&"")` };
    // A day with its hour has no unit, and takes that place too.
    if (name === "earliest ready") page.across(page.row, 2, 3, page.sheet.cells.get(key(page.row, 2))!);
    else page.put(page.row, 3, { ...unit, look: "words" });
    page.row++;
  }
}

/** Beside the plan the range of each load's longest bake, by that of the kind on Blanks that bakes as long or next to it. */
function likelyBakes(page: Page, kit: Kit, header: number, bakes: Ref, { bakesOf: { about, short, long } }: Blanks): void {
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
function sayLikely(page: Page, loads: Ref): void {
  const told = Array.from({ length: loads.rows }, (_, row): Formula => {
    const [load, range] = [cellIn(loads, row), cellIn(loads, row, planned)];
    return formula`IF(LEN(${range})>0,", load "&${load}&": "&${range},"")`;
  }).reduce((all, one) => formula`${all}&${one}`);
  page.say(formula`IF(SUMPRODUCT(LEN(${whole({ ...loads, column: planned })}))=0,"","Likely bakes, min: "&MID(${told},3,999)&".")`, "note");
}

/** The units of the plan's columns, which stand in no heading of the answer. */
function unitsOver(page: Page, kit: Kit): void {
  const fluid = kit.unit("fluid");
  const units: Readonly<Record<number, string>> = {
    4: kit.unit("volume"),
    5: fluid,
    6: fluid,
    7: fluid,
    8: fluid,
    10: kit.unit("powder"),
    15: "min",
  };
  for (const [column, unit] of Object.entries(units)) page.put(page.row, Number(column), { value: unit, look: "unit" });
  page.row++;
}
