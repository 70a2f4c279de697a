import "./dom";
import * as engine from "@odoo/o-spreadsheet";
import { without } from "../../../shared/xlsx/without";
import { model } from "../../../sheet/engine";
import { withoutUndeclared } from "../../../sheet/file/beside/prefixes";
import { opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { cellIn, f, row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const first = "xl/worksheets/sheet1.xml";

/** Rules that the engine knows, and some that it does not: these stay as they came. */
const file = workbookOf({
  sheets: {
    Costs: `${row(1, '<c r="A1"><v>2</v></c>')}|<conditionalFormatting sqref="A1:A9"><cfRule type="expression" dxfId="0" priority="2"><formula>$A$1&gt;1</formula></cfRule><cfRule type="aboveAverage" dxfId="0" priority="1"/></conditionalFormatting><dataValidations count="2"><dataValidation type="list" allowBlank="1" showErrorMessage="1" errorTitle="Wood" error="Choose one." sqref="B1:B9"><formula1>"ash,elm"</formula1></dataValidation><dataValidation type="textLength" operator="lessThan" sqref="C1:C9"><formula1>9</formula1></dataValidation></dataValidations><pageMargins left="1" right="1" top="1" bottom="1" header="0" footer="0"/>`,
  },
});

async function changedBy(...commands: readonly (readonly [type: string, payload: (of: engine.Model, sheetId: string) => object])[]) {
  const workbook = opened(file, engine);
  const book = model(workbook.book);
  const sheetId = book.getters.getSheetIds()[0];
  for (const [type, payload] of commands)
    expect([type, book.dispatch(type as never, { sheetId, ...payload(book, sheetId) } as never).isSuccessful]).toEqual([type, true]);
  return textsOf(await saved(book, workbook, engine));
}

const rangesOf = (ranges: readonly string[]) => (of: engine.Model, id: string) =>
  ranges.map((range) => of.getters.getRangeDataFromXc(id, range));
const above = { type: "CellIsRule", operator: "isGreaterThan", values: ["3"], style: { bold: true, fillColor: "#FF0000" } };

describe("a color by rule that was made on the page", () => {
  it("stands in the file behind those that were there, with its look", async () => {
    const parts = await changedBy([
      "ADD_CONDITIONAL_FORMAT",
      (of, id) => ({ ranges: rangesOf(["D1:D3"])(of, id), cf: { id: "new", rule: above } }),
    ]);
    const xml = parts[first];
    expect(xml).toContain('<cfRule type="aboveAverage" dxfId="0" priority="1"/>');
    expect(xml).toMatch(
      /<\/conditionalFormatting><conditionalFormatting sqref="D1:D3"><cfRule (?=[^>]*type="cellIs")(?=[^>]*priority="3")(?=[^>]*dxfId="1")[^>]*>\s*<formula>3<\/formula>\s*<\/cfRule>\s*<\/conditionalFormatting><dataValidations/,
    );
    expect(parts["xl/styles.xml"]).toMatch(/<dxfs count="2">.*<dxf>.*"FFFF0000".*<\/dxfs>/s);
  });

  it("of more cells than before is the rule of the file for these", async () => {
    const { [first]: xml } = await changedBy([
      "ADD_CONDITIONAL_FORMAT",
      (of, id) => ({ ranges: rangesOf(["A1:A20"])(of, id), cf: of.getters.getConditionalFormats(id)[0] }),
    ]);
    expect(xml).toContain(
      '<conditionalFormatting sqref="A1:A9"><cfRule type="aboveAverage" dxfId="0" priority="1"/></conditionalFormatting>',
    );
    expect(xml).toContain(
      '<conditionalFormatting sqref="A1:A20"><cfRule type="expression" dxfId="0" priority="2"><formula>$A$1&gt;1</formula>',
    );
  });

  it("goes where it is taken away, and leaves the others", async () => {
    const { [first]: xml } = await changedBy([
      "REMOVE_CONDITIONAL_FORMAT",
      (of, id) => ({ id: of.getters.getConditionalFormats(id)[0].id }),
    ]);
    expect(xml).not.toContain("expression");
    expect(xml).toContain('sqref="A1:A9"><cfRule type="aboveAverage"');
  });
});

describe("a rule for typing that was made on the page", () => {
  const list = { type: "isValueInList", values: ["oak", "yew"], displayStyle: "arrow" };

  it("takes its cells from those that had them, and leaves these their words", async () => {
    const { [first]: xml } = await changedBy([
      "ADD_DATA_VALIDATION_RULE",
      (of, id) => ({ ranges: rangesOf(["B4:C5"])(of, id), rule: { id: "new", isBlocking: true, criterion: list } }),
    ]);
    expect(xml).toContain('<dataValidations count="3">');
    expect(xml).toMatch(/errorTitle="Wood" error="Choose one\." sqref="B1:B3 B6:B9"><formula1>"ash,elm"/);
    expect(xml).toMatch(/type="textLength" operator="lessThan" sqref="C1:C3 C6:C9"/);
    expect(xml).toMatch(/<dataValidation (?=[^>]*type="list")(?=[^>]*sqref="B4:C5")[^>]*><formula1>(?:"|&quot;)oak,yew/);
  });

  it("goes where it is taken away", async () => {
    const { [first]: xml } = await changedBy([
      "REMOVE_DATA_VALIDATION_RULE",
      (of, id) => ({ id: of.getters.getDataValidationRules(id)[0].id }),
    ]);
    expect(xml).toContain('<dataValidations count="1"><dataValidation type="textLength"');
  });
});

it.each([
  ["B1:B9", ["B4:C5"], "B1:B3 B6:B9"],
  ["A1:C3", ["B2"], "A1:C1 A3:C3 A2 C2"],
  ["A1 B2", ["A1:B2"], ""],
  ["A1:A3", [], "A1:A3"],
])("%s without %s is %s", (ranges, out, left) => expect(without(ranges, out)).toBe(left));

it("what was copied out of another part brings no prefix along", () =>
  expect(withoutUndeclared('<a xmlns:r="u"><x:b r:id="1" xr:uid="{1}" c="x:y"/><x:d>1 &lt; 2</x:d></a>')).toBe(
    '<a xmlns:r="u"><b r:id="1" c="x:y"/><d>1 &lt; 2</d></a>',
  ));

it("cells of ours are written as Excel writes them where their values change, in whatever form they came", async () => {
  const came = workbookOf({
    sheets: {
      Fill: row(
        1,
        ...["6", "5", "104"].map((value, i) => `<c r="${"ABC"[i]}1"><v>${value}</v></c>`),
        f("D1", "_xlfn.SINGLE(_xldudf_PORE_FILL(A1,B1,C1))", "<v>1</v>"),
        f("E1", "@PORE.FILL(A1,B1,C1)", "<v>1</v>"),
      ),
    },
  });
  const workbook = opened(came, engine);
  const book = model(workbook.book);
  book.dispatch("UPDATE_CELL", { sheetId: book.getters.getSheetIds()[0], col: 0, row: 0, content: "7" });
  const parts = textsOf(await saved(book, workbook, engine));
  for (const address of ["D1", "E1"])
    expect(cellIn(parts[first], address)).toMatch(
      new RegExp(`<c r="${address}" cm="1"><f t="array" ref="${address}">_xldudf_PORE_FILL\\(A1,B1,C1\\)</f><v>[\\d.]+</v></c>`),
    );
  expect(parts["xl/metadata.xml"]).toContain("XLDAPR");
});
