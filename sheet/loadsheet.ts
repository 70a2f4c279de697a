import { cautions } from "../src/cautions";
import { blankWoods } from "./blanksheet";
import { ink, input, paper, quiet, teal, tealPale, warn, warnPale } from "./colours";
import { type Book, type Content, type Draft, type Look, widths } from "./data";
import { letters } from "./letters";
import { kinds, margin, priced, spoiled, tubs } from "./loadlines";
import { todayCell } from "./todaysheet";
import { bySystem } from "./unitwords";

const loadSheet = "Loads";

/** Rows at which the blocks begin. A plan of more loads than its room needs rows inserted above the list. */
export const pieces = { first: 6, last: 10 };
export const planned = { first: 16, last: 25 };
export const list = { first: 32, last: 41 };
export const priceLast = list.first + priced.length - 1;
const sharesLast = list.first + pieces.last - pieces.first;
export const tubFirst = sharesLast + 3;
const tubLast = tubFirst + tubs.length - 1;

const typed: Look = { style: { textColor: input, fillColor: paper, align: "right" } };
const result: Look = { style: { textColor: ink, fillColor: tealPale, align: "right" } };
const bold: Look = { style: { ...result.style, bold: true } };
const word: Look = { style: { textColor: ink } };
const unit: Look = { style: { textColor: quiet } };
const money = "0.00";

const planArguments = `B${pieces.first}:G${pieces.last},K6,K7,K8,MyShop`;

/** A bar across the sheet, with the cautions of the numbers beneath it. */
function addBar(draft: Draft, row: number, title: string, ...care: readonly string[]): void {
  draft.put(`A${row}`, title, { style: { bold: true, textColor: "#ffffff", fillColor: teal } });
  draft.paint(`B${row}:O${row}`, { style: { fillColor: teal } });
  care.forEach((words, i) => {
    draft.put(`A${row + 1 + i}`, words, { style: { textColor: warn, italic: true } });
  });
}

/** Words above columns, the first at the left and the numbers' at the right. */
function addHeads(draft: Draft, heads: Readonly<Record<string, Content>>): void {
  Object.entries(heads).forEach(([cell, head], i) => {
    draft.put(cell, head, { style: { bold: true, textColor: teal, align: i === 0 ? "left" : "right" } });
  });
}

function addPieces(draft: Draft): void {
  addBar(draft, 4, "Pieces, oven-dry");
  const sides = ["thick", "wide", "long"].map((side) => `=${bySystem(`${side}, in`, `${side}, mm`)}`);
  addHeads(draft, { B5: "kind", C5: "count", D5: sides[0], E5: sides[1], F5: sides[2], G5: "wood" });
  for (let row = pieces.first; row <= pieces.last; row++) {
    const kind = kinds[row - pieces.first];
    draft.paint(`B${row}`, { style: { ...typed.style, align: "left" } });
    draft.paint(`C${row}`, kind ? result : typed);
    draft.paint(`D${row}:G${row}`, typed);
    if (!kind) continue;
    draft.cells[`B${row}`] = `${kind.wood} blanks`;
    draft.cells[`C${row}`] = `=COUNTIF(${blankWoods},G${row})`;
    [kind.thickness, kind.width, kind.length, kind.wood].forEach((value, i) => {
      draft.cells[`${letters(3 + i)}${row}`] = String(value);
    });
  }
  const length = `=${bySystem("in", "mm")}`;
  const given = [
    ["chamber inside", `=${todayCell("across")}`, length],
    ["its height", `=${todayCell("high")}`, length],
    ["first load begins", `=${todayCell("second")}+TIME(8,0,0)`, ""],
  ] as const;
  given.forEach(([words, formula, inUnits], i) => {
    draft.put(`I${6 + i}`, words, word);
    draft.put(`K${6 + i}`, formula, i === 2 ? { ...result, format: "yyyy-mm-dd hh:mm" } : result);
    if (inUnits) draft.put(`L${6 + i}`, inUnits, unit);
  });
  draft.put("I9", "as on the sheet Today; counts as on Blanks", unit);
}

function addPlan(draft: Draft): void {
  addBar(draft, 12, "Plan, load by load", cautions.chamber, cautions.oven);
  const units = { D: ["in³", "cm³"], E: ["qt", "L"], F: ["qt", "L"], G: ["qt", "L"], I: ["tsp", "mL"] } as const;
  for (const [column, [us, si]] of Object.entries(units)) {
    draft.put(`${column}${planned.first - 1}`, `=${bySystem(us, si)}`, { style: { textColor: quiet, align: "right" } });
  }
  draft.put(`A${planned.first}`, `=PORE.PLAN(${planArguments})`);
  draft.paint(`A${planned.first}:B${planned.first}`, { style: { bold: true, textColor: teal, align: "left" } });
  draft.paint(`C${planned.first}:O${planned.first}`, { style: { bold: true, textColor: teal, align: "right" } });
  draft.paint(`A${planned.first + 1}:B${planned.last}`, { style: { textColor: ink, align: "left" } });
  draft.paint(`C${planned.first + 1}:O${planned.last}`, { style: { textColor: ink, align: "right" } });
}

function addCosts(draft: Draft): void {
  addHeads(draft, { [`F${list.first - 1}`]: "what costs something", [`H${list.first - 1}`]: "quantity", [`I${list.first - 1}`]: "each" });
  priced.forEach(([name, price], i) => {
    const row = list.first + i;
    draft.put(`F${row}`, name, word);
    draft.put(`H${row}`, `=VLOOKUP(F${row},$B$${list.first}:$C$${list.last},2,FALSE)`, { ...result, format: money });
    draft.put(`I${row}`, price, { ...typed, format: money });
  });
  const cost = priceLast + 1;
  const ladder: readonly (readonly [string, Content, Look])[] = [
    ["cost of the run", `=PORE.RUNCOST(H${list.first}:H${priceLast},I${list.first}:I${priceLast})`, { ...bold, format: money }],
    ["pieces in it", `=SUM(C${pieces.first}:C${pieces.last})`, result],
    ["of them spoiled", spoiled, typed],
    ["one good piece costs", `=PORE.PIECECOST(I${cost},I${cost + 1},I${cost + 2})`, { ...result, format: money }],
    ["margin on the price", margin, { ...typed, format: "0%" }],
    ["price to ask", `=PORE.PRICETAG(I${cost + 3},I${cost + 4})`, { ...bold, format: money }],
  ];
  ladder.forEach(([words, content, look], i) => {
    draft.put(`F${cost + i}`, words, word);
    draft.put(`I${cost + i}`, content, look);
  });

  addHeads(draft, { [`K${list.first - 1}`]: "shared by count", [`L${list.first - 1}`]: "cost" });
  for (let i = 0; i <= sharesLast - list.first; i++) draft.put(`K${list.first + i}`, `=""&G${pieces.first + i}`, word);
  draft.put(`L${list.first}`, `=PORE.SPLITCOST(I${cost},C${pieces.first}:C${pieces.last})`);
  draft.paint(`L${list.first}:L${sharesLast}`, { ...result, format: money });
}

function addTubs(draft: Draft): void {
  const heads = ["resin is sold as", "at", "to buy, qt", "count"];
  addHeads(draft, Object.fromEntries(heads.map((head, i) => [`${letters(10 + i)}${tubFirst - 1}`, head])));
  tubs.forEach(([size, price], i) => {
    draft.put(`K${tubFirst + i}`, size, { style: { ...typed.style, align: "left" } });
    draft.put(`L${tubFirst + i}`, price, { ...typed, format: money });
  });
  const needed = `C${list.first}&" "&D${list.first}`;
  draft.put(`M${tubFirst}`, `=PORE.WHATTOBUY(${needed},K${tubFirst}:K${tubLast},L${tubFirst}:L${tubLast})`);
  draft.paint(`M${tubFirst}:N${tubLast + 2}`, result);
}

const rule = (id: string, formula: string, zone: string, style: object) => ({
  id,
  ranges: [zone],
  rule: { type: "CellIsRule" as const, operator: "customFormula" as const, values: [formula], style },
});
const planZone = `A${planned.first + 1}:O${planned.last}`;

/** Three kinds of blanks planned load by load, what that takes, and what it costs. */
export function addLoadSheet(book: Book): void {
  const layout = {
    cols: widths([46, 184, 56, 66, 112, 70, 122, 66, 60, 90, 122, 122, 122, 94, 122]),
    rows: { 0: { size: 38 }, 1: { size: 26 }, 2: { size: 10 } },
    areGridLinesVisible: false,
    conditionalFormats: [
      rule("notPlanned", `=ISERROR($C${planned.first + 1})`, planZone, { fillColor: warnPale, textColor: warn }),
      rule("load", `=$A${planned.first + 1}<>""`, planZone, { fillColor: tealPale }),
    ],
  };
  book.sheet("loads", loadSheet, { columns: 16, rows: list.last + 20 }, layout, (draft) => {
    draft.put("A1", "Loads to come", { style: { bold: true, fontSize: 16, textColor: teal, verticalAlign: "middle" } });
    draft.put("A2", "Three kinds of the hundred blanks: when each goes in and comes out, what that takes, and what to ask for it.", unit);
    addPieces(draft);
    addPlan(draft);
    addBar(draft, 27, "Shopping list and prices", cautions.ballast, cautions.resin, cautions.storage);
    addHeads(draft, { [`B${list.first - 1}`]: "what it takes" });
    draft.put(`B${list.first}`, `=PORE.SHOPPINGLIST(${planArguments})`);
    draft.paint(`B${list.first}:B${list.last}`, { style: { ...result.style, align: "left" } });
    draft.paint(`C${list.first}:C${list.last}`, result);
    draft.paint(`D${list.first}:D${list.last}`, { style: { fillColor: tealPale, textColor: quiet } });
    addCosts(draft);
    addTubs(draft);
  });
}
