import * as engine from "@odoo/o-spreadsheet";
import { movedFormula } from "../../../../shared/xlsx/filldown";
import { meanings } from "../../../../shared/xlsx/names";
import type { Table } from "../../../../shared/xlsx/tables";
import { joined, tokensOf } from "../../../../shared/xlsx/tokens";
import { engineFormula } from "../../../../sheet/file/contents/spelling";
import { unknownOf } from "../../../../sheet/file/formulas/known";
import { fileFormula } from "../../../../sheet/file/formulas/outward";
import { asStored, asTyped, callsOurs } from "../../../../src/calls";
import "../../../../sheet/engine";

const table: Table = {
  name: "Blanks",
  sheet: "Stock",
  block: { top: 3, left: 1, bottom: 9, right: 3 },
  columns: ["thickness", "long [in]", "price"],
  headerRows: 1,
  totalRows: 1,
};
const names = [
  { name: "rate", text: "0.45" },
  { name: "here", text: "Stock!$A$1", sheet: "Stock" },
  { name: "both", text: "rate+1" },
];
const vocabulary = { tables: [table], meanings: meanings(names) };
const read = (formula: string, at = { sheet: "Stock", row: 4, column: 8 }) => engineFormula(formula, vocabulary, at);

describe("names of functions", () => {
  it.each([
    { stored: "_xldudf_PORE_FILL(A1,B1)", typed: "PORE.FILL(A1,B1)" },
    { stored: "2*_xldudf_PORE_DYE(_xldudf_PORE_FILL(A1,B1))", typed: "2*PORE.DYE(PORE.FILL(A1,B1))" },
    { stored: '"PORE.FILL("&A1', typed: '"PORE.FILL("&A1' },
  ])("$stored is $typed", ({ stored, typed }) => {
    expect(asTyped(stored)).toBe(typed);
    expect(asStored(typed)).toBe(stored);
  });

  it("come back in lower case from some programs", () => expect(asTyped("_xldudf_pore_fill(A1)")).toBe("PORE.FILL(A1)"));
  it("within a text are no calls", () => expect(callsOurs('"PORE.FILL("&A1')).toBe(false));
  it("are found anywhere", () => expect(callsOurs("1+pore.fill(A1)")).toBe(true));
});

describe("a formula of a file, for the engine", () => {
  it.each([
    ["-2^2", "=(-2)^2"],
    ["1-2^2", "=1-2^2"],
    ["A1*-B1^2", "=A1*(-B1)^2"],
    ["-(A1+1)^2", "=(-(A1+1))^2"],
    ["-'My Shop'!A1%^2", "=(-'My Shop'!A1%)^2"],
    ["-SUM(A1:A3)^2+-3", "=(-SUM(A1:A3))^2+-3"],
    ["-2*3^2", "=-2*3^2"],
    ["--A1^2", "=(--A1)^2"],
    ["_xlfn._xlws.FILTER(A1:A3,_xlfn.XLOOKUP(1,A1:A3,A1:A3))", "=FILTER(A1:A3,XLOOKUP(1,A1:A3,A1:A3))"],
    ["SUM(_xlfn.ANCHORARRAY(B2))", "=SUM(B2#)"],
    ['"1 1/2"""', '=("1 1/2"&CHAR(34)&"")'],
    ["#REF!+1", "=#REF+1"],
    ["rate*2", "=(0.45)*2"],
    ["here", "=Stock!$A$1"],
    ["rate(1)", "=rate(1)"],
    ["Blanks[price]", "=$D$5:$D$9"],
    ["Blanks[[#This Row],[price]]", "=$D$5"],
    ["Blanks[[thickness]:[price]]", "=$B$5:$D$9"],
    ["Blanks[#All]", "=$B$4:$D$10"],
    ["Blanks[[#Totals],[price]]", "=$D$10"],
    ["Blanks['[in']]", "=Blanks['[in']]"],
    ["Blanks[long '[in']]", "=$C$5:$C$9"],
    ["LOG10(A1)", "=LOG10(A1)"],
  ])("%s is %s", (file, typed) => expect(read(file)).toBe(typed));

  it("speaks of a table on another sheet by its place", () =>
    expect(read("SUM(Blanks[price])", { sheet: "Costs", row: 0, column: 0 })).toBe("=SUM('Stock'!$D$5:$D$9)"));
});

describe("a formula filled down", () => {
  it.each([
    ["A1+$B1+C$1+$D$1", "B3+$B3+D$1+$D$1"],
    ['SUM(A1:A$9)+LOG10(B2)+"A1"', 'SUM(B3:B$9)+LOG10(C4)+"A1"'],
    ["SUM(A:$B)+SUM(1:$2)", "SUM(B:$B)+SUM(3:$2)"],
    ["'A1 of A1'!A1+A1!B2+Taxes2024", "'A1 of A1'!B3+A1!C4+Taxes2024"],
  ])("%s becomes %s", (first, moved) => expect(movedFormula(first, { row: 2, column: 1 })).toBe(moved));
  it("off the sheet is an error", () => expect(movedFormula("A1", { row: -1, column: 0 })).toBe("#REF!"));
});

describe("a formula of the engine, for a file", () => {
  const write = (typed: string) => fileFormula(typed, engine.astToFormula(engine.parse(typed)), engine);
  it.each([
    ["=-2^2", "-(2^2)"],
    ["=(-2)^2", "-2^2"],
    ['=PORE.FILL(6,("1 1/2"&CHAR(34)&""),10)', '_xldudf_PORE_FILL(6,"1 1/2""",10)'],
    ["=SUM(B2#)+SUM(Stock!B2#)", "SUM(_xlfn.ANCHORARRAY(B2))+SUM(_xlfn.ANCHORARRAY(Stock!B2))"],
    ["=A1*1e-9", "A1*1E-9"],
  ])("%s is %s", (typed, file) => expect(write(typed)).toBe(file));
  it("keeps a text that looks like a day", () => expect(fileFormula('="3/4"', '"2026-03-04"', engine)).toBe('"3/4"'));
});

it.each(["", "=", "=\"a\"\"b\"&'it''s'!$A$1:B2*{1,2;3,4}-1.5E-3%<>#N/A", "=Σ(ä_1.x)?\n+[1]Sheet1!A1"])(
  "tokens of %j join to it",
  (formula) => expect(joined(tokensOf(formula))).toBe(formula),
);

describe("what the engine does not know", () => {
  const around = { names: new Set(["prices"]), sheets: new Set(["my shop"]) };
  it.each([
    ["=BAHTTEXT(1)", "the function BAHTTEXT"],
    ["=SUM(A1,nowhere)", "the name nowhere"],
    ["=[1]Sheet1!A1", "this way of writing a formula"],
    ["='[1]A b'!A1", "the reference '[1]A b'!A1"],
    ["=Sheet1:Sheet3!A1", "this way of writing a formula"],
    ["=SUM(Prices)+'My Shop'!A1+PORE.DYE(1)", undefined],
  ])("of %s is %s", (formula, unknown) => expect(unknownOf(formula, engine, around)).toBe(unknown));
});
