import { cautionsOf } from "../../cautions";
import { whattobuy } from "../../cost/whattobuy";
import { expiry } from "../../resin/expiry";
import { bar } from "../bars";
import { ask, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { type Ref, refTo, whole } from "../place";
import { type Columns, sheetTable } from "../sheettable";
import { ownReason } from "../verdict";
import { day, demoDay } from "./day";
import type { Loads } from "./loads";

const kindsOfSupply = ["resin", "catalyst", "dye", "foil", "other"];

type Units = Readonly<Record<"resin" | "catalyst" | "dye" | "foil", string>>;

const unitDue = ({ kind }: Columns, { resin, catalyst, dye, foil }: Units): Formula =>
  formula`IF(${kind}="resin","${resin}",IF(${kind}="catalyst","${catalyst}",IF(${kind}="dye","${dye}",IF(${kind}="foil","${foil}",""))))`;

/** True where a row's unit is not the plan's, so that no sum may include it. */
const misfit = (all: Columns, units: Units): Formula =>
  formula`AND(ISNUMBER(${all.quantity}),LEN(${unitDue(all, units)})>0,${all.unit}<>${unitDue(all, units)})`;

/** What is in the cupboard, until when it is good, and what to buy for the loads that are planned. */
export function suppliesSheet(kit: Kit, loads: Loads, asOf: Ref): Page {
  const page = new Page(
    "Supplies",
    "Resin, catalyst, dye and foil: when they were opened, how long they keep, and what to buy for the next loads.",
    [27, 12, 10, 10, 17, 10, 2, 12, 10, 15, 20],
    { landscape: true },
  );
  page.open("Supplies");
  const today = page.line({
    label: "as of",
    formula: formula`IF(ISNUMBER(${asOf}),INT(${asOf}),"")`,
    format: day,
  });
  page.skip();
  const units: Units = { resin: kit.unit("fluid"), catalyst: "packets", dye: kit.unit("powder"), foil: kit.unit("foil") };
  const item = (name: string, kind: string, quantity: number, unit: string, opened: number, months: number) => ({
    name,
    kind,
    quantity,
    unit,
    opened: demoDay - opened,
    months,
  });
  const { of } = sheetTable(
    page,
    {
      name: { title: "item", input: true },
      kind: { title: "kind", input: { list: kindsOfSupply, only: true } },
      quantity: { title: "on hand", input: { from: 0, to: 1e6 } },
      unit: { title: "unit", input: true, hint: "As the list below has it: what is in another unit is not counted." },
      opened: { title: "opened or bought", input: { date: true }, format: day },
      months: { title: "good for", unit: "months", input: { from: 0, to: 1200 } },
      useBy: {
        title: "use by",
        format: day,
        each: (all) => given([all.opened, all.months], ask(expiry, { mixed: all.opened, months: all.months })),
      },
      left: { title: "days left", format: "0", each: (all) => formula`IF(COUNT(${all.useBy},${today})=2,${all.useBy}-${today},"")` },
      state: {
        title: "state",
        look: "words",
        each: (all) =>
          formula`IF(LEN(${all.quantity})*(COUNT(${all.quantity})=0)>0,"type a plain number",IF((LEN(${all.quantity})>0)*(LEN(${all.kind})=0)>0,"of which kind?",IF(${misfit(all, units)},"count it in "&${unitDue(all, units)},IF(ISNUMBER(${all.left}),IF(${all.left}<0,"expired",IF(${all.left}<=30,"use it soon","still good")),IF(ISNUMBER(${all.useBy}),"give the day above",IF(ISNUMBER(${all.quantity}),IF(ISNUMBER(${all.opened}),${ownReason(formula`"good for how long?"`)},"when opened?"),""))))))`,
      },
      bars: { title: "days left, to one year", look: "bars", each: ({ left }) => bar(left, 365) },
    },
    kit.demo
      ? [
          item("resin, first can", "resin", kit.of("fluid", 1.5, 1), kit.unit("fluid"), 200, 36),
          item("resin, unopened can", "resin", kit.of("fluid", 1, 1), kit.unit("fluid"), 20, 36),
          item("catalyst packets, old box", "catalyst", 1, "packets", 420, 12),
          item("catalyst packets", "catalyst", 2, "packets", 60, 12),
          item("dye, blue", "dye", kit.of("powder", 3, 0), kit.unit("powder"), 100, 60),
          item("dye, red", "dye", kit.of("powder", 1.5, 0), kit.unit("powder"), 340, 12),
          item("foil", "foil", kit.of("foil", 75, 0), kit.unit("foil"), 30, 240),
        ]
      : [],
    { spare: kit.demo ? 8 : 15, name: "SupplyTable" },
  );
  page.put(of.state.row - 2, of.state.column, { formula: formula`${today}`, look: "unit", format: day });
  const younger = formula`COUNTIF(${whole(of.opened)},">"&${today})`;
  page.put(today.row, 3, {
    formula: formula`IF(ISNUMBER(${today}),IF(${younger}>0,"before something below was opened: type today's date here, or =TODAY()","the sample's day; type another date over it, or =TODAY()"),"type a date here, or =TODAY()")`,
    look: "unit",
  });
  page.alert("bad", today, formula`IF(ISNUMBER(${today}),${younger}>0,FALSE)`);
  page.alert("bad", of.state, formula`${of.state}="expired"`);
  page.alert("bad", of.state, formula`OR(LEFT(${of.state},5)="count",LEFT(${of.state},4)="type",${of.state}="of which kind?")`);
  page.alert("attention", of.state, formula`OR(${of.state}="use it soon",RIGHT(${of.state},1)="?")`);
  page.skip();
  page.heading("For the loads planned", "needed", "still good", "to buy", "unit");
  const wanted: [label: string, need: string, kind: keyof Units, format: string][] = [
    ["resin to mix", "resin to mix", "resin", "0.00"],
    ["catalyst", "packets", "catalyst", "0"],
    ["dye", "dye", "dye", "0.00"],
    ["foil", "foil", "foil", "0.0"],
  ];
  const { head } = loads;
  const needed = (name: string) =>
    formula`IF(ISNUMBER(${loads.need(name)}),${loads.need(name)},IF(ISERROR(${head}),"no plan",IF(LEN(${head})>0,"no plan",0)))`;
  const first = page.row;
  const cell = (row: number, column: number) => refTo(page.sheet.name, first + row, column);
  wanted.forEach(([label, need, kind, format], row) => {
    page.put(first + row, 0, { value: label, look: "label" });
    page.put(first + row, 1, { formula: needed(need), format, look: "result" });
    page.put(first + row, 2, {
      formula: formula`SUMIFS(${whole(of.quantity)},${whole(of.kind)},"${kind}",${whole(of.unit)},"${units[kind]}",${whole(of.left)},">=0")`,
      format,
      look: "result",
    });
    page.put(first + row, 3, {
      formula: formula`IF(ISNUMBER(${cell(row, 1)}),MAX(0,${cell(row, 1)}-${cell(row, 2)}),"no plan")`,
      format,
      look: "result",
    });
    page.put(first + row, 4, { value: units[kind], look: "unit" });
  });
  page.row = first + wanted.length;
  page.say(
    formula`IF(ISNUMBER(${cell(0, 1)}),"Only what is still good on the day above, and in the unit of its line, counts. Dye of every color counts together: check before you buy. Without the add-in, what the plan needs and the cans for it are fixed values.",${ownReason(formula`"There is no plan, so its needs are not known: fix what is red on Loads and My Shop. Without the add-in the plan is a fixed value."`)})`,
  );
  const plan = refTo(page.sheet.name, first, 1, wanted.length);
  page.alert("bad", plan, formula`${plan}="no plan"`);
  page.skip();
  page.heading("Which cans of resin cover it for the least money");
  page.say(`Sizes and the volume they add up to in ${kit.unit("fluid")}; prices in your own money.`);
  const offers = sheetTable(
    page,
    {
      size: { title: `size, ${kit.unit("fluid")}`, input: { from: 0.001, to: 1e6 } },
      price: { title: "price", input: { from: 0.01, to: 1e6 }, format: "#,##0.00" },
    },
    kit.demo
      ? [
          { size: 1, price: 26 },
          { size: kit.of("fluid", 4, 0), price: 88 },
        ]
      : [],
    { spare: kit.demo ? 1 : 3, name: "CanTable" },
  );
  const buy = formula`IF(COUNT(${whole(offers.of.size)})*COUNT(${cell(0, 3)})=0,"",${ask(whattobuy, { need: cell(0, 3), sizes: whole(offers.of.size), prices: whole(offers.of.price) })})`;
  page.put(offers.of.size.row - 1, 3, { value: "size", look: "heading" });
  page.put(offers.of.size.row - 1, 4, { value: "to buy", look: "heading" });
  page.block(buy, refTo(page.sheet.name, offers.of.size.row, 3, offers.of.size.rows + 2, 2), ["General", "General"], {
    headed: false,
    look: "words",
  });
  page.skip();
  page.cautions(cautionsOf(["storage", "resin"]));
  return page;
}
