import "../dom";
import * as engine from "@odoo/o-spreadsheet";
import { bookOf } from "../../../../sheet/book";
import { model } from "../../../../sheet/engine";
import { opened } from "../../../../sheet/file/open";
import { lossesOf, saved } from "../../../../sheet/file/save";
import { row, textsOf, workbookOf } from "../workbooks";
import { first, partsOnce } from "./commands";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();
const ruled = workbookOf({
  sheets: {
    Costs: `${row(1, '<c r="A1"><v>2</v></c>')}${row(5, '<c r="A5"><v>3</v></c>')}|<conditionalFormatting sqref="A5"><cfRule type="expression" dxfId="0" priority="1"><formula>$A$5&gt;2</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="list" sqref="B5"><formula1>$A$1:$A$5</formula1></dataValidation></dataValidations>`,
  },
});

describe("what stands around the cells of a sheet", () => {
  const rowIn = ["ADD_COLUMNS_ROWS", { dimension: "ROW", base: 2, position: "before", quantity: 1 }] as const;
  const rowOut = ["REMOVE_COLUMNS_ROWS", { dimension: "ROW", elements: [4] }] as const;

  it("moves with a row, its formulas too", async () => {
    const { [first]: xml } = await partsOnce(ruled, rowIn);
    expect(xml).toContain('<conditionalFormatting sqref="A6">');
    expect(xml).toContain("<formula>$A$6&gt;2</formula>");
    expect(xml).toContain('sqref="B6"><formula1>$A$1:$A$6</formula1>');
  });

  it("goes with the last of its cells, and leaves no list of nothing", async () => {
    const { [first]: xml } = await partsOnce(ruled, rowOut);
    expect(xml).not.toMatch(/conditionalFormatting|dataValidation/);
  });

  it("is there twice after its sheet was copied, and a new sheet has none of it", async () => {
    const parts = await partsOnce(
      ruled,
      ["DUPLICATE_SHEET", { sheetIdTo: "copy", sheetNameTo: "Costs again" }],
      ["CREATE_SHEET", { sheetId: "new", name: "Bare", position: 1 }],
    );
    expect([...parts["xl/workbook.xml"].matchAll(/<sheet name="([^"]*)" sheetId="(\d+)"/g)].map(([, name, id]) => `${name} ${id}`)).toEqual(
      ["Costs 1", "Bare 3", "Costs again 2"],
    );
    expect([first, "xl/worksheets/sheet2.xml", "xl/worksheets/sheet3.xml"].map((path) => parts[path].includes("<cfRule"))).toEqual([
      true,
      true,
      false,
    ]);
  });
});

describe("groups of rows and columns", () => {
  const line = (number: number, more = "") => `<row r="${number}"${more}><c r="A${number}"><v>${number}</v></c></row>`;
  const given = workbookOf({
    sheets: {
      Costs: [
        line(1),
        line(2, ' outlineLevel="1" hidden="1"'),
        line(3, ' outlineLevel="1" hidden="1"'),
        line(4, ' collapsed="1"'),
        line(5),
      ].join(""),
    },
  });
  const changedBy = async (type: string, dimension: string, start: number, end: number) => {
    const workbook = opened(given, engine);
    const book = model(workbook.book);
    book.dispatch(type as never, { sheetId: book.getters.getSheetIds()[0], dimension, start, end } as never);
    expect(lossesOf(bookOf(book).book, workbook).because).toEqual([]);
    const { [first]: xml, ...rest } = textsOf(await saved(book, workbook, engine));
    const { [first]: _, ...before } = textsOf(given);
    expect(rest).toEqual(before);
    return xml;
  };

  it("made on the page stand in the lines' own tags", async () => {
    const xml = await changedBy("GROUP_HEADERS", "COL", 1, 2);
    expect(xml).toContain('<col min="2" max="2" width="8.43" outlineLevel="1"/><col min="3" max="3" width="8.43" outlineLevel="1"/>');
    expect(xml).toContain('outlineLevelRow="1" outlineLevelCol="1"');
    expect(xml).toContain('<row r="2" outlineLevel="1" hidden="1">');
  });

  it("undone on the page are gone, and what they hid is in sight", async () => {
    const xml = await changedBy("UNGROUP_HEADERS", "ROW", 1, 2);
    expect(xml).not.toMatch(/outlineLevel|hidden|collapsed/);
  });
});
