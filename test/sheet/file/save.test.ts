import "./dom";
import { read } from "@e965/xlsx";
import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { evaluator, model } from "../../../sheet/engine";
import { engineFormula } from "../../../sheet/file/contents/spelling";
import { fileFormula } from "../../../sheet/file/formulas/outward";
import { opened } from "../../../sheet/file/open";
import { recalculated } from "../../../sheet/file/recalculated";
import { saved } from "../../../sheet/file/save";
import { addresses } from "../addresses";
import { hundred } from "../hundred";
import { cellIn, f, row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const first = "xl/worksheets/sheet0.xml";
const nothing = { documents: {}, print: {} };

/** A sheet with these cells, saved; its first part and all others. */
async function savedWith(cells: Readonly<Record<string, string>>, beside: Parameters<typeof saved>[1] = nothing) {
  const book = model({ sheets: [{ id: "s", name: "Costs" }], namedRanges: { prices: "Costs!A1:A3" } });
  for (const [address, content] of Object.entries(cells)) book.dispatch("UPDATE_CELL", { sheetId: "s", ...addresses(address), content });
  const file = await saved(book, beside, engine);
  const parts = textsOf(file);
  return { file, parts, cell: (address: string) => cellIn(parts[first], address)?.replace(/ s="\d+"/, "") };
}

describe("a saved workbook", () => {
  it("keeps a formula that gives one value plain, and a call of ours as programs with the add-in write it", async () => {
    const { cell } = await savedWith({
      A1: "4",
      B1: "=pore.dye(A1)",
      C1: '=PORE.FILL(6,"3/4",10)',
      D1: "=SUM(A1:A3)",
      E1: "=PORE.RUNCOST(A1:A3,A1:A3)",
    });
    expect(cell("B1")).toBe('<c r="B1" cm="1"><f t="array" ref="B1">_xldudf_PORE_DYE(A1)</f><v>1</v></c>');
    expect(cell("C1")).toMatch(
      /<f t="array" ref="C1">_xldudf_PORE_FILL\(6,"3\/4",10\)<\/f>|<f t="array" ref="C1">_xldudf_PORE_FILL\(6,&quot;3\/4&quot;,10\)<\/f>/,
    );
    expect(cell("D1")).toBe('<c r="D1"><f>SUM(A1:A3)</f><v>4</v></c>');
    expect(cell("E1")).toBe('<c r="E1" cm="1"><f t="array" ref="E1">_xldudf_PORE_RUNCOST(A1:A3,A1:A3)</f><v>16</v></c>');
  });

  it("keeps one that fills several as an array formula, every cell with its value and its number format", async () => {
    const { cell, parts, file } = await savedWith({ A1: "104", A2: "90", B1: "93", B2: "93", D1: "=PORE.MOISTURE(A1:A3,B1:B3)" });
    expect(cell("D1")).toMatch(
      /^<c r="D1" cm="1"><f t="array" ref="D1:D3">_xldudf_PORE_MOISTURE\(A1:A3,B1:B3\)<\/f><v>0.1182795698924\d+<\/v><\/c>$/,
    );
    expect(cell("D2")).toMatch(/<c r="D2" t="e">\s*<v>#VALUE!<\/v>\s*<\/c>/);
    const style = / s="(\d+)"/.exec(cellIn(parts[first], "D1")!)![1];
    expect(Number(style)).toBeGreaterThan(0);
    const sheet = read(file).Sheets.Costs;
    expect(sheet.D1.w).toBe("11.8%");
    expect(parts["xl/metadata.xml"]).toContain("XLDAPR");
  });

  it("gives no number format to the shop's own formulas, but for days", async () => {
    const { file } = await savedWith({ A1: "=PORE.MOISTURE(104,93)", B1: "=A1*2", C1: "=DATE(2026,3,14)" });
    const { A1, B1, C1 } = read(file, { cellNF: true }).Sheets.Costs;
    expect([A1.z, B1.z]).toEqual(["0.0%", "General"]);
    expect(C1.z).toMatch(/d/);
  });

  it.each([
    ["=SUM(A1:A3*2)", true],
    ["=SUMPRODUCT(A1:A3,A1:A3)", false],
    ["=SUM(PORE.DYE(A1:A3))", true],
    ["=SUM(PORE.DYE(A1:A3)*2)", true],
    ["=INDEX(A1:A3,2)", false],
    ["=SUM(prices)", false],
    ["=MAX(prices*2)", true],
    ["=IF(A1>0,SUM(A1:A2),2)", false],
    ['=TEXTJOIN(",",TRUE,A1:A3)', false],
    ["=SUM(FILTER(A1:A3,A1:A3>0))", true],
    ["=SUMPRODUCT((LEN(A1:A3)>0)*1)", false],
    ["=SUMPRODUCT(IF(A1:A3>0,1,0))", true],
    ['=SUMIFS(A1:A3,A1:A3,">1",A1:A3,"<3")', false],
    ['=IF(A1>0,"",PORE.DYE(A1:A3))', true],
  ])("%s reckons with several values at a time: %s", async (formula, isArray) => {
    const { cell } = await savedWith({ A1: "1", A2: "2", A3: "3", C1: formula });
    expect(cell("C1")!.includes('t="array" ref="C1"')).toBe(isArray);
  });

  it("keeps text text, without the apostrophe that kept it", async () => {
    const { parts, cell } = await savedWith({ A1: "'3/4", B1: "''tis", C1: "'=1+1", D1: '="1 1/2"' });
    expect(["A1", "B1", "C1"].map((address) => / t="s"/.test(cell(address)!))).toEqual([true, true, true]);
    expect([...parts["xl/sharedStrings.xml"].matchAll(/<t[^>]*>([^<]*)</g)].map(([, text]) => text)).toEqual(["3/4", "'tis", "=1+1"]);
  });

  it("gives a formula that the page does not know back without a value, so that the next program works it out", async () => {
    const { cell } = await savedWith({ A1: "=_xlfn.LET(_xlpm.x,2,_xlpm.x)", B1: "=NOSUCH(1)" });
    expect(cell("A1")).toBe('<c r="A1"><f ca="1">_xlfn.LET(_xlpm.x,2,_xlpm.x)</f></c>');
    expect(cell("B1")).toBe('<c r="B1"><f ca="1">NOSUCH(1)</f></c>');
  });

  it("keeps the brackets and the letters that were typed", async () => {
    const { cell } = await savedWith({ A1: "=((2)+(3*(4)))", B1: "=sum((1+2),3)" });
    expect(["A1", "B1"].map((address) => /<f>(.*)<\/f>/.exec(cell(address)!)![1])).toEqual(["((2)+(3*(4)))", "SUM((1+2),3)"]);
  });

  it("has names, documents and a print set-up, each where the standard wants it", async () => {
    const checklist = '<checklist xmlns="urn:porewise:checklist" version="1">{"a":1}</checklist>';
    const { parts } = await savedWith({ A1: "1" }, { documents: { "urn:porewise:checklist": checklist }, print: {} });
    expect(parts["xl/workbook.xml"]).toContain('<definedNames><definedName name="prices">Costs!$A$1:$A$3</definedName></definedNames>');
    expect(parts["customXml/item1.xml"]).toBe(checklist);
    expect(parts["xl/_rels/workbook.xml.rels"]).toContain('/customXml" Target="../customXml/item1.xml"');
    expect(parts["customXml/itemProps1.xml"]).toContain('<ds:schemaRef ds:uri="urn:porewise:checklist"/>');
    expect(parts["[Content_Types].xml"]).toContain('PartName="/customXml/itemProps1.xml"');
    const order = ["<sheetPr>", "<sheetData>", "<pageMargins", "<pageSetup", "<headerFooter>"].map((tag) => parts[first].indexOf(tag));
    expect(order.every((place, i) => place > (order[i - 1] ?? 0))).toBe(true);
  });

  it("of a hundred blanks opens again with everything in it", async () => {
    const book = model(hundred());
    const again = opened(await saved(book, nothing, engine), engine);
    expect([again.lost, again.unknown]).toEqual([[], []]);
    const other = model(again.book);
    for (const id of book.getters.getSheetIds()) {
      const name = book.getters.getSheetName(id);
      for (const position of book.getters.getEvaluatedCellsPositions(id)) {
        const here = book.getters.getEvaluatedCell(position);
        const there = other.getters.getEvaluatedCell({ ...position, sheetId: other.getters.getSheetIdByName(name)! });
        expect([name, position, there.value, there.formattedValue]).toEqual([name, position, here.value, here.formattedValue]);
      }
    }
  });

  it("says the same to recalc as it shows", async () => {
    const file = await saved(model(hundred()), nothing, engine);
    const { file: again, left, cut } = recalculated(file);
    expect([left, cut]).toEqual([[], []]);
    expect(textsOf(again)).toEqual(textsOf(file));
  });
});

describe("a workbook opened and saved", () => {
  it("keeps its documents, its print set-up under a new name of the sheet, and its formulas", async () => {
    const made = workbookOf({
      sheets: {
        Costs: `${row(1, f("A1", "_xldudf_pore_pricetag(2,0.5)"), f("B1", 'LEN("a""b")'), f("C1", "-2^2"), f("D1", "_xlfn.LET(_xlpm.x,2,_xlpm.x)"))}|<pageMargins left="1" right="1" top="1" bottom="1" header="0.3" footer="0.3"/>`,
      },
      names: '<definedName name="_xlnm.Print_Area" localSheetId="0">Costs!$A$1:$C$9</definedName>',
      relations:
        '<Relationship Id="x1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>',
      parts: { "customXml/item1.xml": '<kept xmlns="urn:kept"/>' },
    });
    const workbook = opened(made, engine);
    const book = model(workbook.book);
    book.dispatch("RENAME_SHEET", { sheetId: book.getters.getSheetIdByName("Costs")!, oldName: "Costs", newName: "June" });
    const parts = textsOf(await saved(book, workbook, engine));
    const own = Object.keys(parts).find((path) => path.startsWith("xl/worksheets/"))!;
    expect(parts[own]).toBe(textsOf(made)[own]);
    expect(parts["xl/workbook.xml"]).toContain('<definedName name="_xlnm.Print_Area" localSheetId="0">June!$A$1:$C$9</definedName>');
    expect(parts["customXml/item1.xml"]).toBe('<kept xmlns="urn:kept"/>');
  });
});

describe("signs and powers", () => {
  const answer = evaluator();
  const vocabulary = { tables: [], meanings: () => undefined };
  const expression = fc.letrec((tie) => ({
    any: fc.oneof({ maxDepth: 4 }, tie("number"), tie("signed"), tie("power"), tie("sum")),
    number: fc.constantFrom("1", "2", "3"),
    signed: tie("any").map((inner) => `-${inner}`),
    power: fc.tuple(tie("number"), tie("number")).map(([a, b]) => `${a}^${b}`),
    sum: fc.tuple(tie("any"), fc.constantFrom("+", "*"), tie("any")).map(([a, mark, b]) => `(${a}${mark}${b})`),
  })).any as fc.Arbitrary<string>;

  it("mean the same after a way out and back", () =>
    fc.assert(
      fc.property(expression, (typed) => {
        const file = fileFormula(`=${typed}`, engine.astToFormula(engine.parse(`=${typed}`)), engine);
        const back = engineFormula(file, vocabulary, { sheet: "A", row: 0, column: 0 });
        expect([file, answer(back).value]).toEqual([file, answer(typed).value]);
      }),
    ));
});
