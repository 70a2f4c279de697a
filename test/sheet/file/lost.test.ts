import "./dom";
import { open } from "./opened";
import { f, row } from "./workbooks";

jest.spyOn(console, "debug").mockImplementation();

describe("what the page does not keep", () => {
  it.each([
    { what: "macros", parts: { "xl/vbaProject.bin": "x" } },
    { what: "pivot tables", parts: { "xl/pivotTables/pivotTable1.xml": "<x/>" } },
    { what: "comments in threads", parts: { "xl/threadedComments/threadedComment1.xml": "<x/>" } },
    { what: "links to other workbooks", parts: { "xl/externalLinks/externalLink1.xml": "<x/>" } },
    { what: "shapes and text boxes", parts: { "xl/drawings/drawing1.xml": "<xdr:wsDr xmlns:xdr='u'><xdr:sp/></xdr:wsDr>" } },
  ] as { what: string; parts: Record<string, string> }[])("is told: $what", ({ what, parts }) =>
    expect(open({ sheets: { Costs: "" }, parts }).lost).toEqual([expect.stringContaining(what)]),
  );

  const list = (formula: string) =>
    `${row(1)}|<dataValidations count="1"><dataValidation type="list" sqref="A1"><formula1>${formula}</formula1></dataValidation></dataValidations>`;
  const rules = (sheet: string, names = "") => {
    const { book, lost } = open({ sheets: { Costs: sheet }, names });
    return {
      lost,
      rules: (book as { sheets: { dataValidationRules: { criterion: { values: string[] } }[] }[] }).sheets[0].dataValidationRules,
    };
  };

  it("is told of a list that a formula gives, which is then no list at all", () =>
    expect(rules(list("INDIRECT(B1)"))).toEqual({ lost: [expect.stringContaining("lists that a formula gives")], rules: [] }));

  it("is no list by the name of a range", () => {
    const found = rules(list("woods"), '<definedName name="Woods">Costs!$B$1:$B$9</definedName>');
    expect([found.lost, found.rules[0].criterion.values]).toEqual([[], ["Costs!B1:B9"]]);
  });

  it("is no second rule of a block, and the first in rank comes first", () => {
    const rule = (rank: number, limit: number) =>
      `<cfRule type="cellIs" dxfId="0" priority="${rank}" operator="greaterThan"><formula>${limit}</formula></cfRule>`;
    const { book } = open({
      sheets: { Costs: `${row(1)}|<conditionalFormatting sqref="A1:A9">${rule(2, 5)}${rule(1, 7)}</conditionalFormatting>` },
    });
    const found = (book as { sheets: { conditionalFormats: { rule: { values: string[] } }[] }[] }).sheets[0].conditionalFormats;
    expect(found.map(({ rule }) => rule.values[0])).toEqual(["7", "5"]);
  });

  it("is nothing in a plain workbook", () =>
    expect(open({ sheets: { Costs: row(1, f("A1", "1")) } })).toMatchObject({ lost: [], unknown: [] }));

  it("names the cells whose formulas it does not know, and those keep their formulas", () => {
    const { unknown, typed } = open({ sheets: { Costs: row(1, f("A1", '_xlfn.LET(_xlpm.x,2,_xlpm.x&"""")'), f("B1", "A1")) } });
    expect(unknown).toEqual(["Costs!A1"]);
    expect(typed("A1")).toContain("_xlfn.LET(");
  });
});
