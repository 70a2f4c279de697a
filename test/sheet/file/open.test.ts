import "./dom";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { opened } from "../../../sheet/file/open";
import { f, partsOf, row, workbookOf, zipOf } from "./workbooks";

jest.spyOn(console, "debug").mockImplementation();

import { open } from "./opened";

const relation = (kind: string, target: string, id = "x1") =>
  `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${kind}" Target="${target}"/>`;

describe("a workbook from disk", () => {
  it("keeps PORE formulas as formulas, in whatever case its program stored them", () => {
    const { shown, typed } = open({
      sheets: {
        Costs:
          row(1, f("A1", "_xldudf_pore_dye(4)"), '<c r="B1" cm="1"><f t="array" ref="B1:B2">_xldudf_PORE_DYE({4;8})</f><v>0</v></c>') +
          row(2, '<c r="B2"><v>77</v></c>'),
      },
    });
    expect(typed("A1")).toBe("=PORE.DYE(4)");
    expect(["A1", "B1", "B2"].map((address) => shown(address).value)).toEqual([1, 1, 2]);
    expect(shown("B2").formattedValue).toBe("2.00");
  });

  it("shows the looks of a file that gives its types by the ends of names", () => {
    const parts = partsOf({
      sheets: { Costs: `${row(1, '<c r="A1"><v>1</v></c>')}|<mergeCells count="1"><mergeCell ref="A1:B2"/></mergeCells>` },
    });
    const main = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml";
    const types = parts["[Content_Types].xml"]
      .replace(/<Override PartName="\/xl\/workbook.xml"[^>]*>/, "")
      .replace('Extension="xml" ContentType="application/xml"', `Extension="xml" ContentType="${main}"`);
    const { lost, getters } = (() => {
      const workbook = opened(zipOf({ ...parts, "[Content_Types].xml": types }), engine);
      return { lost: workbook.lost, getters: model(workbook.book).getters };
    })();
    expect(lost).toEqual([]);
    expect(getters.getMerges(getters.getSheetIds()[0])).toHaveLength(1);
  });

  it("shows the rest of a sheet whose chart lost its cells", () => {
    const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    const related = (one: string) =>
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${one}</Relationships>`;
    const corner = (name: string) => `<${name}><col>1</col><colOff>0</colOff><row>1</row><rowOff>0</rowOff></${name}>`;
    const drawing = "http://schemas.openxmlformats.org/drawingml/2006/";
    const { lost, getters } = open({
      sheets: {
        Costs: `${row(1, '<c r="A1"><v>1</v></c>')}|<mergeCells count="1"><mergeCell ref="A1:B2"/></mergeCells><drawing r:id="x1"/>`,
      },
      parts: {
        "xl/worksheets/_rels/sheet1.xml.rels": related(relation("drawing", "../drawings/drawing1.xml")),
        "xl/drawings/drawing1.xml": `<wsDr xmlns="${drawing}spreadsheetDrawing"><twoCellAnchor>${corner("from")}${corner("to")}<graphicFrame><nvGraphicFramePr><cNvPr id="2" name="Chart"/></nvGraphicFramePr><a:graphic xmlns:a="${drawing}main"><a:graphicData uri="${drawing}chart"><c:chart xmlns:c="${drawing}chart" xmlns:r="${office}" r:id="x1"/></a:graphicData></a:graphic></graphicFrame></twoCellAnchor></wsDr>`,
        "xl/drawings/_rels/drawing1.xml.rels": related(relation("chart", "../charts/chart1.xml")),
        "xl/charts/chart1.xml": `<c:chartSpace xmlns:c="${drawing}chart"><c:chart><c:plotArea><c:barChart><c:barDir val="col"/><c:ser><c:idx val="0"/><c:val><c:numRef><c:f>Costs!#REF!</c:f></c:numRef></c:val></c:ser></c:barChart></c:plotArea></c:chart></c:chartSpace>`,
      },
    });
    expect(lost).toEqual([]);
    expect(getters.getMerges(getters.getSheetIds()[0])).toHaveLength(1);
  });

  it("keeps text as text", () => {
    const { shown } = open({
      sheets: {
        Costs: row(
          1,
          '<c r="A1" t="s"><v>0</v></c>',
          '<c r="B1" t="s"><v>1</v></c>',
          '<c r="C1" t="s"><v>2</v></c>',
          '<c r="D1" t="s"><v>3</v></c>',
        ),
      },
      strings: ["3/4", "=1+1", "007", "'tis"],
    });
    expect(["A1", "B1", "C1", "D1"].map((address) => shown(address).value)).toEqual(["3/4", "=1+1", "007", "'tis"]);
  });

  it("keeps the order of its sheets, its names, and sheets with an apostrophe", () => {
    const sheets = { "B's": row(1, '<c r="A1"><v>3</v></c>'), A: row(1, f("A1", "SUM(Here)*rate+'B''s'!A1")) };
    const { getters, shown } = open({
      sheets,
      names: `<definedName name="Here">'B''s'!$A$1:$A$2</definedName><definedName name="rate">0.5</definedName>`,
    });
    expect(getters.getSheetIds().map((id) => getters.getSheetName(id))).toEqual(["B’s", "A"]);
    expect(shown("A1", "A").value).toBe(4.5);
  });

  it("opens sheets in the order of the workbook, not of its parts", () => {
    const parts = partsOf({ sheets: { First: row(1, '<c r="A1"><v>1</v></c>'), Second: row(1, '<c r="A1"><v>2</v></c>') } });
    const rels = "xl/_rels/workbook.xml.rels";
    parts[rels] = parts[rels].replace("sheet1", "sheet#").replace("sheet2", "sheet1").replace("sheet#", "sheet2");
    const { getters } = model(opened(zipOf(parts), engine).book);
    expect(getters.getSheetIds().map((id) => getters.getSheetName(id))).toEqual(["First", "Second"]);
    expect(getters.getEvaluatedCell({ sheetId: getters.getSheetIds()[0], col: 0, row: 0 }).value).toBe(2);
  });

  it("hands its documents and its print set-up over for the save", () => {
    const { documents, print } = open({
      sheets: {
        Costs: `${row(1, f("A1", "1"))}|<pageMargins left="1" right="1" top="1" bottom="1" header="0.3" footer="0.3"/><pageSetup orientation="landscape" r:id="p1"/>`,
      },
      names: '<definedName name="_xlnm.Print_Titles" localSheetId="0">Costs!$1:$1</definedName>',
      relations: relation("customXml", "../customXml/item1.xml") + relation("customXml", "../customXml/item2.xml", "x2"),
      parts: {
        "customXml/item1.xml": '<checklist xmlns="urn:porewise:checklist" version="1">{}</checklist>',
        "customXml/item2.xml": "<other/>",
      },
    });
    expect(documents).toEqual({
      "urn:porewise:checklist": '<checklist xmlns="urn:porewise:checklist" version="1">{}</checklist>',
      "": "<other/>",
    });
    expect(print.sheet1.elements[1]).toBe('<pageSetup orientation="landscape"/>');
    expect(print.sheet1.names).toEqual({ "_xlnm.Print_Titles": "Costs!$1:$1" });
  });

  it("calls our functions from its rules too", () => {
    const { getters, book } = open({
      sheets: {
        Costs: `${row(1, '<c r="A1"><v>1</v></c>')}|<conditionalFormatting sqref="A1"><cfRule type="expression" dxfId="0" priority="1"><formula>ISERROR(_xldudf_PORE_DYE(A1))</formula></cfRule></conditionalFormatting>`,
      },
    });
    expect(JSON.stringify((book as { sheets: object[] }).sheets)).toContain("PORE.DYE(A1)");
    expect(getters.getSheetIds()).toHaveLength(1);
  });

  it("opens without its looks where the engine cannot read them", () => {
    const { lost, shown } = open({ sheets: { Costs: row(1, f("A1", "6*7")) }, parts: { "xl/styles.xml": "<styleSheet><cellXfs><xf" } });
    expect(lost).toEqual([expect.stringMatching(/its formatting/)]);
    expect(shown("A1").value).toBe(42);
  });
});

describe("a rule that colours cells", () => {
  it("leaves their size and wrapping as they are", () => {
    const rule =
      '<conditionalFormatting sqref="A1"><cfRule type="expression" dxfId="0" priority="1"><formula>TRUE</formula></cfRule></conditionalFormatting>';
    const { book } = opened(workbookOf({ sheets: { Costs: `${row(1, f("A1", "1+1"))}|${rule}` } }), engine);
    const [{ rule: read }] = (book as WorkbookData).sheets[0].conditionalFormats;
    expect(read).toMatchObject({ style: { bold: true } });
    expect((read as { style: object }).style).not.toHaveProperty("wrapping");
    expect((read as { style: object }).style).not.toHaveProperty("fontSize");
  });
});
