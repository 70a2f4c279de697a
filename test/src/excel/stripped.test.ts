import { stripped } from "../../../src/excel/stripped";
import { file, read } from "../workbook/sharing/twoparts";

describe("a copy for the web", () => {
  const copy = read(stripped(file));
  it("holds no drawing, chart or comment, and no mention of one", () => {
    expect(Object.keys(copy).filter((name) => /drawings|charts/.test(name))).toEqual([]);
    expect(copy["xl/worksheets/sheet1.xml"]).not.toMatch(/rawing/);
    expect(copy["xl/worksheets/_rels/sheet1.xml.rels"]).toBe(
      '<Relationships><Relationship Id="t" Type="t/table" Target="../tables/table1.xml"/></Relationships>',
    );
  });
  it("keeps tables and formulas", () => {
    expect(copy["xl/tables/table1.xml"]).toBe("<t/>");
    expect(copy["xl/worksheets/sheet1.xml"]).toContain("_xldudf_PORE_DYE(A1:A2)");
  });
});
