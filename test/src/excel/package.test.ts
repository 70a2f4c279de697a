import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { base64, stripped, withValues } from "../../../src/excel/package";

const parts = {
  "[Content_Types].xml":
    '<Types><Override PartName="/xl/calcChain.xml" ContentType="c"/><Override PartName="/xl/charts/chart1.xml" ContentType="x"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="s"/></Types>',
  "xl/_rels/workbook.xml.rels":
    '<Relationships><Relationship Id="a" Target="calcChain.xml"/><Relationship Id="b" Target="worksheets/sheet1.xml"/></Relationships>',
  "xl/calcChain.xml": "<calcChain/>",
  "xl/worksheets/sheet1.xml":
    '<sheetData><c r="A1"><v>2</v></c><c r="B1" cm="1" s="3"><f t="array" ref="B1:B2">_xldudf_PORE_DYE(A1:A2)</f><v>0.5</v></c><c r="B2"><v>0.25</v></c><c r="C1"><f>SUM(A1)</f><v>2</v></c><c r="D1" t="str"><f>pore.spoons(B1)</f><v>1/2 tsp</v></c></sheetData><drawing r:id="x"/><legacyDrawing r:id="y"/><tableParts count="1"/>',
  "xl/worksheets/_rels/sheet1.xml.rels":
    '<Relationships><Relationship Id="x" Target="../drawings/drawing1.xml"/><Relationship Id="y" Target="/xl/drawings/vml1.vml"/><Relationship Id="t" Target="../tables/table1.xml"/></Relationships>',
  "xl/drawings/drawing1.xml": "<d/>",
  "xl/drawings/vml1.vml": "<v/>",
  "xl/charts/chart1.xml": "<c/>",
  "xl/tables/table1.xml": "<t/>",
};
const file = zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
const read = (made: Uint8Array) => Object.fromEntries(Object.entries(unzipSync(made)).map(([name, data]) => [name, strFromU8(data)]));

describe("a copy with values", () => {
  const { file: made, cells } = withValues(file);
  const copy = read(made);

  it("keeps the values of PORE cells and drops their formulas", () => {
    expect(cells).toBe(2);
    expect(copy["xl/worksheets/sheet1.xml"]).toContain(
      '<c r="B1" s="3"><v>0.5</v></c><c r="B2"><v>0.25</v></c><c r="C1"><f>SUM(A1)</f><v>2</v></c>',
    );
    expect(copy["xl/worksheets/sheet1.xml"]).toContain('<c r="D1" t="str"><v>1/2 tsp</v></c>');
  });
  it("drops the order of calculation and every mention of it", () => {
    expect(Object.keys(copy)).not.toContain("xl/calcChain.xml");
    expect(copy["xl/_rels/workbook.xml.rels"]).toBe('<Relationships><Relationship Id="b" Target="worksheets/sheet1.xml"/></Relationships>');
    expect(copy["[Content_Types].xml"]).not.toContain("calcChain");
  });
  it("leaves every other part as it is", () => {
    const changed = Object.keys(copy).filter((name) => copy[name] !== parts[name as keyof typeof parts]);
    expect(changed.sort()).toEqual(["[Content_Types].xml", "xl/_rels/workbook.xml.rels", "xl/worksheets/sheet1.xml"]);
  });
});

describe("a copy for the web", () => {
  const copy = read(stripped(file));
  it("holds no drawing, chart or comment, and no mention of one", () => {
    expect(Object.keys(copy).filter((name) => /drawings|charts/.test(name))).toEqual([]);
    expect(copy["xl/worksheets/sheet1.xml"]).not.toMatch(/rawing/);
    expect(copy["xl/worksheets/_rels/sheet1.xml.rels"]).toBe(
      '<Relationships><Relationship Id="t" Target="../tables/table1.xml"/></Relationships>',
    );
  });
  it("keeps tables and formulas", () => {
    expect(copy["xl/tables/table1.xml"]).toBe("<t/>");
    expect(copy["xl/worksheets/sheet1.xml"]).toContain("_xldudf_PORE_DYE(A1:A2)");
  });
});

it("turns bytes into base64, however many", () => {
  const bytes = Uint8Array.from({ length: 100_000 }, (_, i) => i % 256);
  expect(base64(bytes)).toBe(Buffer.from(bytes).toString("base64"));
});
