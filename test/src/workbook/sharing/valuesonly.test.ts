import { strToU8, zipSync } from "fflate";
import { withValues } from "../../../valued";
import { file, parts, read, sheetOf, toSheet } from "./twoparts";

describe("a copy with values", () => {
  const { file: made, cells } = withValues(file);
  const copy = read(made);

  it("keeps the values of PORE cells and drops their formulas", () => {
    expect(cells).toBe(2);
    expect(copy["xl/worksheets/sheet1.xml"]).toContain('<c r="B1" s="3"><v>0.5</v></c><c r="C1"><f>SUM(A1)</f><v>2</v></c>');
    expect(copy["xl/worksheets/sheet1.xml"]).toContain('<c r="D1" t="str"><v>1/2 tsp</v></c>');
  });
  it("drops the order of calculation and every mention of it", () => {
    expect(Object.keys(copy)).not.toContain("xl/calcChain.xml");
    expect(copy["xl/_rels/workbook.xml.rels"]).toBe(`<Relationships>${toSheet}</Relationships>`);
    expect(copy["[Content_Types].xml"]).not.toContain("calcChain");
  });
  it("leaves every other part as it is", () => {
    const changed = Object.keys(copy).filter((name) => copy[name] !== parts[name as keyof typeof parts]);
    expect(changed.sort()).toEqual(["[Content_Types].xml", "xl/_rels/workbook.xml.rels", "xl/worksheets/sheet1.xml"]);
  });
});

describe("a copy with values of a sheet that another program wrote", () => {
  const valued = (rows: string, after = "", table = "<t/>") => {
    const sheet = sheetOf(rows.startsWith("<row") || !rows ? rows : `<row r="1">${rows}</row>`, after);
    const all = { ...parts, "xl/worksheets/sheet1.xml": sheet, "xl/tables/table1.xml": table };
    const { file: made, ...counts } = withValues(
      zipSync(Object.fromEntries(Object.entries(all).map(([name, text]) => [name, strToU8(text)]))),
    );
    return { copy: read(made)["xl/worksheets/sheet1.xml"], table: read(made)["xl/tables/table1.xml"], ...counts };
  };

  it("has the values of formulas that are filled down, and other formulas that are", () => {
    const rows = (first: string, second: string) => `<row r="1">${first}</row><row r="2">${second}</row>`;
    const other = ['<c r="C1"><f t="shared" ref="C1:C2" si="1">A1*2</f><v>1</v></c>', '<c r="C2"><f t="shared" si="1"/><v>2</v></c>'];
    const ours = [
      '<c r="B1"><f t="shared" ref="B1:B2" si="0">_xldudf_PORE_DYE(A1)</f><v>1</v></c>',
      '<c r="B2"><f t="shared" si="0"/><v>2</v></c>',
    ];
    const { copy, cells } = valued(rows(ours[0] + other[0], ours[1] + other[1]));
    expect(copy).toBe(sheetOf(rows(`<c r="B1"><v>1</v></c>${other[0]}`, `<c r="B2"><v>2</v></c>${other[1]}`)));
    expect(cells).toBe(2);
  });
  it("knows them whatever the prefix of the file's own names", () => {
    const { copy, cells } = valued(
      '<x:c xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main" r="A1"><x:f>_xldudf_PORE_DYE(1)</x:f><x:v>1</x:v></x:c>',
    );
    expect([cells, copy.includes("PORE")]).toEqual([1, false]);
  });
  it("has blank cells before them as they were", () => {
    const { copy } = valued('<c r="A1" s="2"/><c r="B1" cm="1"><f t="array" ref="B1:B2">_xldudf_PORE_DYE(A1:A2)</f><v>1</v></c>');
    expect(copy).toContain('<c r="A1" s="2"/><c r="B1"><v>1</v></c>');
  });
  it.each(['"PORE.FILL(6,5,104)"', "&quot;_xldudf_PORE_FILL(&quot;&amp;A1", "'PORE.DYE('!A1", "SPORE.DYE(A1)", "PORE_DYE"])(
    "has %s as a formula still",
    (formula) => {
      const cell = `<c r="A1" t="str"><f>${formula}</f><v>x</v></c>`;
      expect(valued(cell)).toMatchObject({ copy: sheetOf(`<row r="1">${cell}</row>`), cells: 0 });
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
      `<table>${column(ours)}${column("A1")}</table>`,
    );
    expect(made.copy).toBe(sheetOf("", block(rule("A1")) + lists(1, list("A1"))));
    expect(made.rules).toBe(5);
    expect(made.table).toBe(`<table><tableColumn id="1"></tableColumn>${column("A1")}</table>`);
    expect(valued("", lists(1, list(ours))).copy).toBe(sheetOf(""));
  });
});
