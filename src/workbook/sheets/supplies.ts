import { cautionsOf } from "../../cautions";
import { whattobuy } from "../../cost/whattobuy";
import { expiry } from "../../resin/expiry";
import { ask, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { type Ref, refTo, whole } from "../place";
import { day, demoDay } from "./day";
import type { Loads } from "./loads";

const kindsOfSupply = ["resin", "catalyst", "dye", "foil", "other"];

/** What is in the cupboard, until when it is good, and what to buy for the loads that are planned. */
export function suppliesSheet(kit: Kit, loads: Loads, asOf: Ref): Page {
  const page = new Page(
    "Supplies",
    "Resin, catalyst, dye and foil with the day they were opened, until when they are good, and what to buy for the next loads.",
    [30, 13, 12, 12, 14, 12, 3, 14, 12, 16],
    { landscape: true, pages: 1 },
  );
  page.open("Supplies");
  const today = page.line({
    label: "as of",
    formula: formula`IF(${asOf}="","",INT(${asOf}))`,
    format: day,
  });
  page.put(today.row, 3, {
    formula: formula`IF(ISNUMBER(${today}),"the day of the demo; type another day over it, or =TODAY()","type a day here, or =TODAY()")`,
    look: "unit",
  });
  page.skip();
  const item = (name: string, kind: string, quantity: number, unit: string, opened: number, months: number) => ({
    name,
    kind,
    quantity,
    unit,
    opened: demoDay - opened,
    months,
  });
  const { of } = page.table(
    {
      name: { title: "item", input: true },
      kind: { title: "kind", input: { list: kindsOfSupply, only: true } },
      quantity: { title: "there", input: { from: 0, to: 1e6 } },
      unit: { title: "unit", input: true },
      opened: { title: "opened", input: { date: true }, format: day },
      months: { title: "good for", unit: "months", input: { from: 0, to: 1200 } },
      useBy: { title: "use by", format: day, spills: (all) => ask(expiry, { mixed: all.opened, months: all.months }) },
      left: { title: "days left", format: "0", each: (all) => formula`IF(COUNT(${all.useBy},${today})=2,${all.useBy}-${today},"")` },
      state: {
        title: "state",
        look: "words",
        each: (all) =>
          formula`IF(ISNUMBER(${all.left}),IF(${all.left}<0,"expired",IF(${all.left}<=30,"use it soon","good")),IF(ISNUMBER(${all.useBy}),"give the day above",""))`,
      },
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
  page.alert("bad", of.state, formula`${of.state}="expired"`);
  page.alert("attention", of.state, formula`${of.state}="use it soon"`);
  page.skip();
  page.heading("For the loads planned", "needed", "good there", "to buy", "unit");
  const wanted: [label: string, need: string, kind: string, unit: string, format: string][] = [
    ["resin to mix", "fluid to mix", "resin", kit.unit("fluid"), "0.00"],
    ["catalyst", "packets", "catalyst", "packets", "0"],
    ["dye", "dye", "dye", kit.unit("powder"), "0.00"],
    ["foil", "foil", "foil", kit.unit("foil"), "0.0"],
  ];
  const first = page.row;
  const cell = (row: number, column: number) => refTo(page.sheet.name, first + row, column);
  wanted.forEach(([label, need, kind, unit, format], row) => {
    page.put(first + row, 0, { value: label, look: "label" });
    page.put(first + row, 1, { formula: formula`IF(ISNUMBER(${loads.need(need)}),${loads.need(need)},0)`, format, look: "result" });
    page.put(first + row, 2, {
      formula: formula`SUMIFS(${whole(of.quantity)},${whole(of.kind)},"${kind}",${whole(of.left)},">=0")`,
      format,
      look: "result",
    });
    page.put(first + row, 3, { formula: formula`MAX(0,${cell(row, 1)}-${cell(row, 2)})`, format, look: "result" });
    page.put(first + row, 4, { value: unit, look: "unit" });
  });
  page.row = first + wanted.length;
  page.say("Only what is not expired counts as there. Dye of every colour counts together: look before you buy.");
  page.skip();
  page.heading("Which cans of resin cover it at the least price");
  page.say(`Sizes and the volume they add up to in ${kit.unit("fluid")}; prices in your own money.`);
  const offers = page.table(
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
  const buy = formula`IF(COUNT(${whole(offers.of.size)})=0,"",${ask(whattobuy, { need: cell(0, 3), sizes: whole(offers.of.size), prices: whole(offers.of.price) })})`;
  page.put(offers.of.size.row - 1, 3, { value: "size", look: "heading" });
  page.put(offers.of.size.row - 1, 4, { value: "to buy", look: "heading" });
  page.block(buy, refTo(page.sheet.name, offers.of.size.row, 3, offers.of.size.rows + 2, 2), ["General", "General"], {
    headed: false,
    look: "words",
  });
  page.skip();
  page.cautions(cautionsOf(["storage", "resin"]));
  page.sheet.frozen = { rows: 0, columns: 1 };
  return page;
}
