import type { Contract } from "../../../shared/contract";
import { cautionsOf } from "../../cautions";
import { plan } from "../../plan/plan";
import { shoppinglist } from "../../plan/shoppinglist";
import { ask, formula } from "../formula";
import type { Kit } from "../kit";
import { failed, Page } from "../page";
import { between, cellIn, type Ref, refTo } from "../place";
import type { Blanks } from "./blanks";
import { demoDay, moment } from "./day";
import { notices } from "./notices";
import type { Shop } from "./shop";

/** Rows of the plan that the chart reaches. */
const charted = 14;
const chartRows = 21;

export interface Loads {
  readonly page: Page;
  readonly start: Ref;
  /** Quantity on a line of the shopping list. */
  readonly need: (name: string) => Ref;
}

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
  "earliest ready": "ddd mm-dd hh:mm",
  "not planned": "0",
};
const lineNames = Object.keys(lines);

const brief = "ddd mm-dd hh:mm";

/** As the contract has them, moments with their day of the week and without their year. */
const formatsOf = ({ format }: Contract): string[] =>
  Object.values(format as Readonly<Record<string, string>>).map((own) => (own === moment ? brief : own));

/** The plan over all blanks, for the wall, with what it takes. */
export function loadsSheet(kit: Kit, shop: Shop, blanks: Blanks): Loads {
  const page = new Page(
    "Loads",
    "When to soak and bake everything on Blanks, with one person working the hours on My Shop, and what it takes.",
    [5, 19, 15, 7, 8, 8, 7, 8, 7, 8, 6, 11, 15, 15, 15, 8, 15, 3, 8, 11, 11, 11, 11],
    { landscape: true, columns: 17, ...(kit.demo ? { pages: 1 } : {}) },
  );
  page.open("Loads");
  const given = { pieces: blanks.planned, chamber: shop.chamber, height: shop.height };
  page.put(page.row, 0, { value: "start", look: "label" });
  const start = page.put(page.row, 1, {
    value: kit.demo ? demoDay + 2 + 8 / 24 : undefined,
    look: "input",
    format: moment,
    allowed: { date: true },
    hint: "Day and hour to begin. Blank: the plan counts back from “ready by” on My Shop.",
  });
  const undated = formula`AND(${start}="",${shop.typed("ready by")}="")`;
  page.put(page.row, 2, {
    formula: formula`IF(${undated},"type a day and hour here, or “ready by” on My Shop","day and hour to begin; the shopping list needs none")`,
    look: "unit",
  });
  page.skip();
  page.say("With the add-in this plan follows every change. Without it, the plan is a fixed value.");
  page.skip();
  page.heading("", "shopping list", "quantity", "unit");
  const list = refTo(page.sheet.name, page.row, 1, lineNames.length, 3);
  const top = page.row;
  page.block(ask(shoppinglist, { ...given, start }), list, ["General", "0.00", "General"], { headed: false, look: "words" });
  for (const [i, name] of lineNames.entries()) page.put(top + i, 2, { look: "words", format: lines[name] });
  const need = (name: string) => cellIn(list, lineNames.indexOf(name), 1);
  page.alert(
    "attention",
    between(cellIn(list, lineNames.length - 1), need("not planned")),
    formula`IF(ISNUMBER(${need("not planned")}),${need("not planned")}>0,FALSE)`,
  );
  page.row = top + chartRows;
  page.cautions(cautionsOf([...plan.cautions, "wet wood"]));
  page.skip();
  unitsOver(page, kit);
  page.sheet.print = { ...page.sheet.print, titleRow: page.row };
  const header = page.row;
  const room = (kit.demo ? 11 : 25) + 1;
  const planned = formula`IF(${undated},"",${ask(plan, { ...given, start })})`;
  const all = page.block(planned, refTo(page.sheet.name, header, 0, room, 17), formatsOf(plan), { look: "words" });
  const column = (index: number, rows = room - 1) => refTo(page.sheet.name, header + 1, index, rows);
  const [inside, out, toOven, done] = [12, 13, 14, 16].map((index) => column(index, charted));
  page.alert("bad", { ...all, row: header + 1, rows: room - 1 }, failed(column(12)));
  notices(page, shop, blanks, top + lineNames.length, { discarded: need("resin discarded"), into: column(12), done: column(16) });
  page.row = header - 1;
  const { of } = page.table(
    {
      load: { title: "load", look: "note", each: () => formula`IF(ISNUMBER(${inside}),${column(0, charted)},"")` },
      before: {
        title: "h before",
        look: "note",
        format: "0.0",
        each: () => formula`IF(ISNUMBER(${inside}),(${inside}-${cellIn(inside, 0)})*24,"")`,
      },
      soaking: { title: "in chamber", look: "note", format: "0.0", each: () => formula`IF(ISNUMBER(${inside}),(${out}-${inside})*24,"")` },
      waiting: { title: "waiting", look: "note", format: "0.0", each: () => formula`IF(ISNUMBER(${inside}),(${toOven}-${out})*24,"")` },
      baking: {
        title: "in the oven",
        look: "note",
        format: "0.0",
        each: () => formula`IF(COUNT(${inside},${done})=2,(${done}-${toOven})*24,"")`,
      },
    },
    [],
    { spare: charted, column: 18 },
  );
  page.row = header + room;
  page.chart({
    title: "Loads over time",
    kind: "bar",
    across: of.load,
    series: [
      { name: "not yet begun", values: of.before, color: "FFFFFF" },
      { name: "in the chamber", values: of.soaking, color: "5A3E2B" },
      { name: "taken out, waiting", values: of.waiting, color: "D8CFC0" },
      { name: "in the oven", values: of.baking, color: "C9822B" },
    ],
    at: { row: top, column: 5, rows: chartRows - 1, columns: 9 },
    axes: ["load", "hours from the start"],
    alt: "One bar for each load: in the chamber, waiting for the oven, and in the oven, in hours from the start of the first load.",
  });
  page.sheet.frozen = { rows: 0, columns: 1 };
  return { page, start, need };
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
