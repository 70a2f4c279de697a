import { recalculated } from "../../../sheet/file/recalculated";
import { first, sheetOf } from "./recalculatedsheet";
import { cellIn, f, row, textsOf, workbookOf } from "./workbooks";

jest.spyOn(console, "debug").mockImplementation();

describe("recalc reads", () => {
  it("text that looks like a number or a day as text", () => {
    const { cell } = sheetOf(
      row(
        1,
        '<c r="A1" t="s"><v>0</v></c>',
        '<c r="B1" t="inlineStr"><is><r><t>1 1</t></r><r><t>/2</t></r></is></c>',
        '<c r="C1" t="str"><v>TRUE</v></c>',
        '<c r="D1" t="s"><v>1</v></c>',
      ) +
        row(
          2,
          f("A2", "ISTEXT(A1)"),
          f("B2", 'B1&""'),
          f("C2", "ISTEXT(C1)"),
          f("D2", "LEN(D1)"),
          f("E2", "_xldudf_PORE_FILL(6,B1,10)-_xldudf_PORE_FILL(6,1.5,10)"),
        ),
      { strings: ["3/4", "=1+1"] },
    );
    expect(["A2", "C2"].map(cell)).toEqual(["A2", "C2"].map((address) => expect.stringMatching(new RegExp(`${address}" t="b".*<v>1</v>`))));
    expect(cell("B2")).toContain("<v>1 1/2</v>");
    expect(cell("D2")).toContain("<v>4</v>");
    expect(cell("E2")).toContain("<v>0</v>");
  });

  it("formulas filled down", () => {
    const { cell } = sheetOf(
      row(1, '<c r="A1"><v>1</v></c>', '<c r="B1"><f t="shared" ref="B1:B3" si="0">A1*$A$1+ATAN2(1,0)+1</f></c>') +
        row(2, '<c r="A2"><v>2</v></c>', '<c r="B2"><f t="shared" si="0"/><v>0</v></c>') +
        row(3, '<c r="A3"><v>3</v></c>', '<c r="B3"><f t="shared" si="0"></f></c>'),
    );
    expect(["B1", "B2", "B3"].map((address) => /<v>(.*)<\/v>/.exec(cell(address)!)?.[1])).toEqual(["2", "3", "4"]);
    expect(cell("B2")).toBe('<c r="B2"><f t="shared" si="0"/><v>3</v></c>');
  });

  it("names of ranges, numbers and formulas, and other sheets", () => {
    const result = recalculated(
      workbookOf({
        sheets: {
          "June's batch": row(1, f("A1", "SUM(prices)*rate"), f("B1", "'It''s so'!A2+local"), f("C1", "-2^2"), f("D1", "twice")),
          "It's so": row(1, '<c r="A1"><v>2</v></c>') + row(2, '<c r="A2"><v>3</v></c>'),
        },
        names: `<definedName name="prices">'It''s so'!$A$1:$A$2</definedName><definedName name="rate">0.5</definedName><definedName name="twice">2*'It''s so'!$A$2</definedName><definedName name="local" localSheetId="0">'It''s so'!$A$1</definedName>`,
      }),
    );
    const xml = textsOf(result.file)[first];
    expect(["A1", "B1", "C1", "D1"].map((address) => /<v>(.*)<\/v>/.exec(cellIn(xml, address)!)?.[1])).toEqual(["2.5", "5", "4", "6"]);
    expect(result.left).toEqual([]);
  });

  it("tables by the names of their columns", () => {
    const table = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" name="Stock" displayName="Stock" ref="A1:B3"><tableColumns count="2"><tableColumn id="1" name="count"/><tableColumn id="2" name="price"/></tableColumns></table>`;
    const { cell, left } = sheetOf(
      row(1, '<c r="A1" t="s"><v>0</v></c>', '<c r="B1" t="s"><v>1</v></c>', f("D1", "_xldudf_PORE_RUNCOST(Stock[count],Stock[price])")) +
        row(2, '<c r="A2"><v>2</v></c>', '<c r="B2"><v>31.5</v></c>', f("D2", "Stock[[#This Row],[price]]*2")) +
        row(3, '<c r="A3"><v>1</v></c>', '<c r="B3"><v>4</v></c>'),
      {
        strings: ["count", "price"],
        parts: {
          "xl/tables/table1.xml": table,
          "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/table" Target="../tables/table1.xml"/></Relationships>`,
        },
      },
    );
    expect(left).toEqual([]);
    expect(cell("D1")).toContain("<v>67</v>");
    expect(cell("D2")).toContain("<v>63</v>");
  });

  it("parts whose names carry a prefix", () => {
    const prefixed = `<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row r="1"><x:c r="A1" t="str"><x:f>1+1</x:f><x:v>old</x:v></x:c><x:c r="B1"><x:f>A1*2</x:f></x:c></x:row></x:sheetData></x:worksheet>`;
    const xml = textsOf(recalculated(workbookOf({ sheets: { Costs: "" }, parts: { [first]: prefixed } })).file)[first];
    expect(xml).toContain('<x:c r="A1"><x:f>1+1</x:f><x:v>2</x:v></x:c><x:c r="B1"><x:f>A1*2</x:f><x:v>4</x:v></x:c>');
  });
});

describe("recalc leaves", () => {
  const { cell, left } = sheetOf(
    row(
      1,
      '<c r="A1" t="str"><f>BAHTTEXT(5)</f><v>five</v></c>',
      f("B1", 'A1&"!"'),
      f("C1", "_xlfn.LET(_xlpm.x,2,_xlpm.x)", "<v>2</v>"),
      f("D1", "C1*2"),
      f("E1", "E2+1", "<v>17</v>"),
      f("F1", "[1]Prices!A1", "<v>8</v>"),
      f("G1", "A2:A3*1", "<v>6</v>"),
      '<c r="H1"><f t="dataTable" ref="H1:H2" dt2D="0" r1="A2"/><v>12</v></c>',
    ) +
      row(2, '<c r="A2"><v>6</v></c>', f("E2", "E1", "<v>16</v>"), f("F2", "E1+F1+G1")) +
      row(3, '<c r="A3"><v>7</v></c>'),
  );

  it("formulas that the engine does not know as they were, and says so", () => {
    expect(cell("A1")).toBe('<c r="A1" t="str"><f>BAHTTEXT(5)</f><v>five</v></c>');
    expect(cell("C1")).toContain("<v>2</v>");
    expect(cell("H1")).toContain("<v>12</v>");
    expect(left).toEqual([
      { where: "Costs!A1", words: "the engine does not know the function BAHTTEXT" },
      { where: "Costs!C1", words: "the engine does not know the function LET" },
      { where: "Costs!E1", words: "it refers to itself" },
      { where: "Costs!F1", words: "the engine does not know this way of writing a formula" },
      { where: "Costs!G1", words: "it is not an array formula, but gives several values" },
      { where: "Costs!H1", words: "the engine does not know a table of trials" },
      { where: "Costs!E2", words: "it refers to itself" },
    ]);
  });

  it("their values for the formulas that refer to them", () => {
    expect(cell("B1")).toContain("<v>five!</v>");
    expect(cell("D1")).toContain("<v>4</v>");
    expect(cell("F2")).toContain("<v>31</v>");
  });
});

describe("recalc calculates", () => {
  it("a running total, and sheets of odd names", () => {
    const total = (line: number) => row(line, `<c r="A${line}"><v>${line}</v></c>`, f(`B${line}`, `SUM(A$1:A${line})`));
    const made = recalculated(
      workbookOf({ sheets: { ["__proto__"]: total(1) + total(2) + total(3), constructor: row(1, f("A1", "'__proto__'!B3*2")) } }),
    );
    const parts = Object.entries(textsOf(made.file)).filter(([path]) => path.startsWith("xl/worksheets/sheet"));
    expect(parts.map(([, xml]) => [...xml.matchAll(/<v>(\d+)<\/v><\/c>(?=<\/row>)/g)].map(([, value]) => value))).toEqual([
      ["1", "3", "6"],
      ["12"],
    ]);
  });
});
