import { recalculated } from "../../../sheet/file/recalculated";
import { allowance } from "../../../sheet/guard";
import { first, sheetOf } from "./recalculatedsheet";
import { cellIn, f, row, textsOf, workbookOf } from "./workbooks";

jest.spyOn(console, "debug").mockImplementation();

describe("recalc writes", () => {
  it("the values of formulas and nothing else, byte for byte", () => {
    const rows = row(
      1,
      '<c r="A1" s="1"><v>1.50</v></c>',
      '<c r="B1" s="1" foo=\'a>b\' t="e"><f ca="1">PRODUCT(A1,1)</f><v>#NAME?</v></c>',
      '<c r="C1"   t="s"  s="1" ><v>0</v></c>',
    );
    const after = '<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/>\r\n<!-- kept -->';
    const parts = { "xl/theme/theme1.xml": "<theme/>", "custom/odd.bin": "\u0001 kept" };
    const made = {
      sheets: {
        Costs: `${row(1, rows)}|${after}`.replace(`<row r="1"><row r="1">`, '<row r="1">').replace("</row></row>", "</row>"),
        Other: row(1, '<c r="A1"><v>7</v></c>'),
      },
      strings: ["resin &amp; dye"],
      parts,
    };
    const file = workbookOf(made);
    const before = textsOf(file);
    const { [first]: written, ...others } = textsOf(recalculated(file).file);
    const { [first]: old, ...kept } = before;
    expect(others).toEqual(kept);
    expect(Object.keys(textsOf(recalculated(file).file))).toEqual(Object.keys(before));
    expect(written).toBe(old.replace(' t="e"><f ca', "><f ca").replace("#NAME?", "1.5"));
  });

  it("a file that says the same already back as it was", () => {
    const rows = row(
      1,
      f("A1", "1/4", "<v>0.250</v>"),
      '<c r="B1" t="str"><f>"a"&amp;"b"</f><v>ab</v></c>',
      '<c r="C1" t="b"><f>1=1</f><v>1</v></c>',
    );
    const file = workbookOf({ sheets: { Costs: rows } });
    expect(textsOf(recalculated(file).file)).toEqual(textsOf(file));
  });

  it("numbers, texts, truths and errors each in their form", () => {
    const { cell } = sheetOf(
      row(
        1,
        f("A1", "1/3"),
        f("B1", '"a <b> & "&"c"'),
        f("C1", "1=1"),
        f("D1", "1/0", "<v>3</v>"),
        f("E1", "_xldudf_PORE_MOISTURE(90,93)"),
        f("F1", "NA()"),
        '<c r="G1" vm="2" t="e"><f>2+2</f><v>#VALUE!</v></c>',
        '<c r="H1" t="str"><f>IF(1=1,"","x")</f><v>old</v></c>',
      ),
    );
    expect(cell("A1")).toBe('<c r="A1"><f>1/3</f><v>0.3333333333333333</v></c>');
    expect(cell("B1")).toContain('t="str"><f>"a &lt;b> &amp; "&amp;"c"</f><v>a &lt;b&gt; &amp; c</v>');
    expect(cell("C1")).toBe('<c r="C1" t="b"><f>1=1</f><v>1</v></c>');
    expect(cell("D1")).toBe('<c r="D1" t="e"><f>1/0</f><v>#DIV/0!</v></c>');
    expect(cell("E1")).toBe('<c r="E1" t="e" cm="1"><f t="array" ref="E1">_xldudf_PORE_MOISTURE(90,93)</f><v>#VALUE!</v></c>');
    expect(cell("F1")).toContain('t="e"><f>NA()</f><v>#N/A</v>');
    expect(cell("G1")).toBe('<c r="G1"><f>2+2</f><v>4</v></c>');
    expect(cell("H1")).toBe('<c r="H1" t="str"><f>IF(1=1,"","x")</f><v></v></c>');
  });

  it("formulas of ours in Excel's own form, with the part that explains it, once", () => {
    const shared = '<f t="shared" ref="B2:B3" si="0">_xldudf_PORE_DYE(A2)</f>';
    const file = workbookOf({
      sheets: {
        Costs:
          row(1, f("A1", "2"), f("B1", "1+_xldudf_PORE_DYE(A1)"), '<c r="C1" t="e"><f>_xldudf_PORE_SPOONS(B1)</f><v>#NAME?</v></c>') +
          row(2, '<c r="A2"><v>4</v></c>', `<c r="B2">${shared}</c>`) +
          row(3, '<c r="A3"><v>8</v></c>', '<c r="B3"><f t="shared" si="0"/></c>'),
      },
    });
    const once = recalculated(file).file;
    const { [first]: xml, "xl/metadata.xml": metadata, "xl/_rels/workbook.xml.rels": relations } = textsOf(once);
    expect(cellIn(xml, "A1")).toBe('<c r="A1"><f>2</f><v>2</v></c>');
    expect(cellIn(xml, "B1")).toBe('<c r="B1" cm="1"><f t="array" ref="B1">1+_xldudf_PORE_DYE(A1)</f><v>1.5</v></c>');
    expect(cellIn(xml, "C1")).toMatch(/^<c r="C1" t="str" cm="1"><f t="array" ref="C1">/);
    expect(cellIn(xml, "B3")).toBe('<c r="B3" cm="1"><f t="array" ref="B3">_xldudf_PORE_DYE(A3)</f><v>2</v></c>');
    expect(metadata).toContain('name="XLDAPR"');
    expect(relations).toContain('relationships/sheetMetadata" Target="metadata.xml"');
    expect(textsOf(recalculated(once).file)).toEqual(textsOf(once));
  });

  it.each(["PORE.DYE(2)", "@PORE.DYE(2)", "@_xldudf_PORE_DYE(2)", "_xlfn.SINGLE(_xldudf_PORE_DYE(2))"])(
    "%s, as another program spelt it, under the name that Excel keeps",
    (text) =>
      expect(sheetOf(row(1, f("A1", text))).cell("A1")).toBe(
        '<c r="A1" cm="1"><f t="array" ref="A1">_xldudf_PORE_DYE(2)</f><v>0.5</v></c>',
      ),
  );

  it("what an array formula fills, into cells and rows that are there or not", () => {
    const { cell, xml, found, errors, faulty } = sheetOf(
      row(
        1,
        '<c r="A1"><v>104</v></c>',
        '<c r="B1"><v>93</v></c>',
        '<c r="D1" cm="1"><f t="array" ref="D1:D3">_xldudf_pore_moisture(A1:A3,B1:B3)</f></c>',
        '<c r="F1"><v>9</v></c>',
      ) +
        row(2, '<c r="A2"><v>90</v></c>', '<c r="B2"><v>93</v></c>', '<c r="F2"><v>9</v></c>') +
        '<row r="5" ht="20"/>',
    );
    expect(cell("D1")).toMatch(/<v>0.11827956989247\d+<\/v>/);
    expect(xml).toContain('<c r="B2"><v>93</v></c><c r="D2" t="e"><v>#VALUE!</v></c><c r="F2">');
    expect(xml).toContain('</row><row r="3"><c r="D3" t="str"><v></v></c></row><row r="5" ht="20"/>');
    expect([found, faulty]).toEqual([1, 1]);
    expect(errors).toEqual([{ where: "Costs!D2", words: "#VALUE! weight is lighter than when dry: weigh again" }]);
  });

  it("the cells of an old array formula and none beyond", () => {
    const { cell, xml } = sheetOf(
      row(1, '<c r="A1"><f t="array" ref="A1:A2">{1;2;3}</f></c>') + row(2, '<c r="A2" s="1"/>') + row(3, '<c r="A3"><v>9</v></c>'),
    );
    expect(cell("A2")).toBe('<c r="A2" s="1"><v>2</v></c>');
    expect(cell("A3")).toBe('<c r="A3"><v>9</v></c>');
    expect(xml).not.toContain("SPILL");
  });

  it("says where an answer is larger than the room it has", () => {
    const { cut, cell } = sheetOf(
      row(1, '<c r="A1"><v>104</v></c>', f("B1", "_xldudf_PORE_WEIGHTGAIN(A1:A2,A1:A2)")) +
        row(
          2,
          '<c r="A2"><v>105</v></c>',
          '<c r="B2"><v>5</v></c>',
          '<c r="D2" cm="1"><f t="array" ref="D2:D2">_xldudf_PORE_WEIGHTGAIN(A1:A2,A1:A2)</f></c>',
        ),
    );
    expect(cell("B1")).toContain("<v>0</v>");
    expect(cell("B2")).toContain("<v>5</v>");
    expect(cut.map(({ where }) => where)).toEqual(["Costs!B1", "Costs!D2"]);
    expect(cut[1].words).toContain("fills D2:D3");
  });
});

describe("recalc refuses", () => {
  it("a workbook that counts from 1904", () =>
    expect(() => recalculated(workbookOf({ sheets: { Costs: "" }, properties: '<workbookPr date1904="1"/>' }))).toThrow(/1904/));
  it("a formula that fills a whole sheet", () =>
    expect(() => sheetOf(row(1, '<c r="A1"><f t="array" ref="A1:XFD1048576">1</f></c>'))).toThrow(/fills more than 1000000 cells/));
  it("a cell at the far end of a sheet", () =>
    expect(() => sheetOf(row(1, f("A1", "1")) + row(1048576, '<c r="XFD1048576"><v>1</v></c>'))).toThrow(/reach too far/));
  it("formulas that together take too long", () => {
    const results = jest.replaceProperty(allowance, "results", 5_000);
    expect(() => sheetOf(row(1, ...["A", "B", "C"].map((letter) => f(`${letter}1`, "SUM(SEQUENCE(3000))"))))).toThrow(/take longer than/);
    results.restore();
  });
  it("a damaged part", () => expect(() => recalculated(workbookOf({ sheets: { Costs: "<row>" } }))).toThrow(/damaged/));
});
