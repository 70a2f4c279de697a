import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { base64 } from "../../../src/excel/base64";
import { stripped, withValues } from "../../../src/excel/package";

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

describe("a copy with values of a sheet that another program wrote", () => {
  const valued = (rows: string, after = "", table = "<t/>") => {
    const sheet = `<sheetData>${rows}</sheetData>${after}`;
    const all = { ...parts, "xl/worksheets/sheet1.xml": sheet, "xl/tables/table1.xml": table };
    const { file: made, ...counts } = withValues(
      zipSync(Object.fromEntries(Object.entries(all).map(([name, text]) => [name, strToU8(text)]))),
    );
    return { copy: read(made)["xl/worksheets/sheet1.xml"], table: read(made)["xl/tables/table1.xml"], ...counts };
  };

  it("has the values of formulas that are filled down, and other formulas that are", () => {
    const ours =
      '<c r="B1"><f t="shared" ref="B1:B2" si="0">_xldudf_PORE_DYE(A1)</f><v>1</v></c><c r="B2"><f t="shared" si="0"/><v>2</v></c>';
    const other = '<c r="C1"><f t="shared" ref="C1:C2" si="1">A1*2</f><v>1</v></c><c r="C2"><f t="shared" si="1"/><v>2</v></c>';
    const { copy, cells } = valued(ours + other);
    expect([copy, cells]).toEqual([`<sheetData><c r="B1"><v>1</v></c><c r="B2"><v>2</v></c>${other}</sheetData>`, 2]);
  });
  it("has blank cells before them as they were", () => {
    const { copy } = valued('<c r="A1" s="2"/><c r="B1" cm="1"><f t="array" ref="B1:B2">_xldudf_PORE_DYE(A1:A2)</f><v>1</v></c>');
    expect(copy).toContain('<c r="A1" s="2"/><c r="B1"><v>1</v></c>');
  });
  it.each(['"PORE.FILL(6,5,104)"', "&quot;_xldudf_PORE_FILL(&quot;&amp;A1", "'PORE.DYE('!A1", "SPORE.DYE(A1)", "PORE_DYE"])(
    "has %s as a formula still",
    (formula) => {
      const cell = `<c r="A1" t="str"><f>${formula}</f><v>x</v></c>`;
      expect(valued(cell)).toMatchObject({ copy: `<sheetData>${cell}</sheetData>`, cells: 0 });
    },
  );
  it("has no rule, list or column of a table that calls PORE, and the others", () => {
    const rule = (formula: string) => `<cfRule type="expression" priority="1"><formula>${formula}</formula></cfRule>`;
    const list = (formula: string) => `<dataValidation type="custom" sqref="A1"><formula1>${formula}</formula1></dataValidation>`;
    const block = (rules: string) => `<conditionalFormatting sqref="A1">${rules}</conditionalFormatting>`;
    const ours = "_xldudf_PORE_DYE(A1)&gt;1";
    const scale = `<cfRule type="colorScale"><colorScale><cfvo type="formula" val="${ours}"/></colorScale></cfRule>`;
    const lists = (count: number, all: string) => `<dataValidations count="${count}">${all}</dataValidations>`;
    const newer = `<extLst><ext uri="u"><x14:conditionalFormattings><x14:conditionalFormatting><x14:cfRule><xm:f>${ours}</xm:f></x14:cfRule><xm:sqref>A1</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst>`;
    const column = (formula: string) => `<tableColumn id="1"><calculatedColumnFormula>${formula}</calculatedColumnFormula></tableColumn>`;
    const made = valued(
      "",
      block(rule(ours)) + block(rule(ours) + rule("A1")) + block(scale) + lists(2, list(ours) + list("A1")) + newer,
      column(ours) + column("A1"),
    );
    expect(made.copy).toBe(`<sheetData></sheetData>${block(rule("A1"))}${lists(1, list("A1"))}`);
    expect(made.rules).toBe(5);
    expect(made.table).toBe(`<tableColumn id="1"></tableColumn>${column("A1")}`);
    expect(valued("", lists(1, list(ours))).copy).toBe("<sheetData></sheetData>");
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
