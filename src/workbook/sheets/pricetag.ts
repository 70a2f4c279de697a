import { piececost } from "../../cost/piececost";
import { pricetag } from "../../cost/pricetag";
import { runcost } from "../../cost/runcost";
import { splitcost } from "../../cost/splitcost";
import { bar } from "../bars";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { type Ref, refTo, whole } from "../place";
import { sheetTable } from "../sheettable";
import { dash } from "../shown";
import { verdict } from "../verdict";

const money = "#,##0.00";

export interface PriceTag {
  readonly page: Page;
  readonly total: Ref;
  readonly pieces: Ref;
  readonly spoiled: Ref;
}

/** From what went into a run to what is asked for a piece. */
export function priceSheet(kit: Kit): PriceTag {
  const page = new Page(
    "Price Tag",
    "What a run costs, what one good piece costs, what to charge, and how to split the cost. Prices are in your own money.",
    [28, 12, 12, 26, 2, 11, 16],
  );
  page.open("Price Tag");
  page.heading("What went into the run");
  const bought = (item: string, quantity: number, unit: string, price: number) => ({ item, quantity, unit, price });
  const { of } = sheetTable(
    page,
    {
      item: { title: "item", input: true },
      quantity: { title: "quantity", input: { from: -1e12, to: 1e12 } },
      price: {
        title: "price of one",
        input: { from: -1e12, to: 1e12 },
        format: money,
        hint: "For one unit. Use a minus sign for what you take back.",
      },
      unit: { title: "unit, note", input: true },
      line: {
        title: "line",
        format: money,
        each: ({ quantity, price }) => formula`IF(AND(ISNUMBER(${quantity}),ISNUMBER(${price})),ROUND(${quantity}*${price},2),"")`,
      },
      bars: { title: "share of the cost", look: "bars", each: ({ line }) => bar(line, formula`MAX(0.01,MAX(${whole(line)}))`) },
    },
    kit.demo
      ? [
          bought("resin", kit.of("fluid", 1.25, 2), `${kit.unit("fluid")}, taken up and lost`, kit.system === "US" ? 24.5 : 25.9),
          bought("catalyst", 2, "packets", 3.75),
          bought("dye", kit.of("powder", 0.5, 1), kit.unit("powder"), kit.system === "US" ? 1.2 : 0.24),
          bought("foil", kit.of("foil", 6, 2), kit.unit("foil"), kit.system === "US" ? 0.06 : 0.65),
          bought("blanks", 20, "pieces", 1.1),
          bought("electricity", 2.4, "kWh", 0.17),
        ]
      : [],
    { spare: kit.demo ? 6 : 12, name: "CostTable" },
  );
  const total = page.line({
    label: "total",
    formula: ask(
      runcost,
      { quantities: whole(of.quantity), prices: whole(of.price) },
      formula`IF(COUNT(${whole(of.quantity)})=0,"",IF(SUMPRODUCT((LEN(${whole(of.quantity)})>0)*(LEN(${whole(of.price)})=0)+(LEN(${whole(of.quantity)})=0)*(LEN(${whole(of.price)})>0))>0,"${dash}",SUMPRODUCT(ROUND(${whole(of.quantity)}*${whole(of.price)},2))))`,
    ),
    format: money,
    look: "total",
  });
  page.put(total.row, 3, {
    formula: verdict(total, "each line rounded to the cent", "a line has only a quantity or only a price"),
    look: "note",
  });
  page.skip();
  page.heading("One piece");
  const pieces = page.line({ label: "pieces in the run", value: kit.demo ? 20 : undefined, input: { from: 1, to: 1e6, whole: true } });
  const spoiled = page.line({
    label: "of them spoiled",
    value: kit.demo ? 2 : undefined,
    input: { from: 0, to: 1e6, whole: true },
    note: "the good ones pay for them",
  });
  const cost = ask(piececost, { total, pieces, spoiled });
  const each = page.line({
    label: "cost of one good piece",
    formula: formula`IF(OR(${total}="",${pieces}=""),"",IF(OR(${pieces}<1,${pieces}<>INT(${pieces}),${spoiled}<>INT(${spoiled}),${spoiled}<0,${spoiled}>=${pieces}),"${dash}",${cost}))`,
    format: money,
    look: "total",
  });
  page.put(each.row, 3, {
    formula: verdict(each, "shown to the cent, calculated exactly", "no good piece is left, or a number is missing or not whole"),
    look: "note",
  });
  const share = page.line({
    label: "margin, and the same as a markup",
    value: kit.demo ? 0.5 : undefined,
    input: { from: 0, to: 0.9999 },
    format: "0%",
  });
  // No share of its price is more than the whole: built-in formulas would answer with a price below zero.
  const isShare = formula`IF(ISNUMBER(${share}),AND(${share}>=0,${share}<=0.9999),FALSE)`;
  const shared = (made: Formula) => formula`IF(${isShare},${made},IF(${share}="","","${dash}"))`;
  page.put(share.row, 3, {
    formula: formula`IF(${isShare},"a margin is a share of the price, a markup one of the cost",IF(${share}="","a share from 0 to 0.9999, such as 0.5 or 50 %","not from 0 to 0.9999: type 0.5 or 50 %"))`,
    look: "note",
  });
  page.alert("bad", share, formula`IF(${share}="",FALSE,IF(${isShare},FALSE,TRUE))`);
  page.skip();
  page.heading("side by side", "margin", "markup", "what it means");
  const { row } = page;
  const texts: [string, ReturnType<typeof formula>, ReturnType<typeof formula>, string, string][] = [
    [
      "price to charge",
      shared(formula`IF(ISNUMBER(${each}),${ask(pricetag, { cost: each, margin: share })},"")`),
      shared(formula`IF(ISNUMBER(${each}),ROUND(${each}*(1+${share}),2),"")`),
      money,
      "to the cent",
    ],
    [
      "left over from a piece",
      formula`IF(ISNUMBER(${refTo(page.sheet.name, row, 1)}),${refTo(page.sheet.name, row, 1)}-${each},"")`,
      formula`IF(ISNUMBER(${refTo(page.sheet.name, row, 2)}),${refTo(page.sheet.name, row, 2)}-${each},"")`,
      money,
      "before tax and your time",
    ],
    [
      "as a margin on the price",
      shared(formula`${share}`),
      shared(formula`${share}/(1+${share})`),
      "0.0%",
      "the part of the price you keep",
    ],
    ["as a markup on the cost", shared(formula`${share}/(1-${share})`), shared(formula`${share}`), "0.0%", "what you add to the cost"],
  ];
  texts.forEach(([label, margin, markUp, format, note], i) => {
    page.put(row + i, 0, { value: label, look: "label" });
    page.put(row + i, 1, { formula: margin, format, look: i ? "result" : "total" });
    page.put(row + i, 2, { formula: markUp, format, look: i ? "result" : "total" });
    page.put(row + i, 3, { value: note, look: "note" });
  });
  page.row = row + texts.length;
  page.skip();
  page.heading("Shared by weight");
  page.say("The total, split in proportion to weights or counts. The parts add up to the cent.");
  sheetTable(
    page,
    {
      who: { title: "who or what", input: true },
      weight: { title: "weight", input: { from: 0, to: 1e12 } },
      share: { title: "share", format: money, spills: ({ weight }) => ask(splitcost, { total, weights: whole(weight) }) },
    },
    kit.demo
      ? [
          { who: "club", weight: 8 },
          { who: "member A", weight: 5 },
          { who: "member B", weight: 5 },
        ]
      : [],
    { spare: 5, name: "ShareTable" },
  );
  return { page, total, pieces, spoiled };
}
