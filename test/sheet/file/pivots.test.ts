import "./dom";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { pivotInTheWay } from "../../../sheet/file/beside/pivotguard";
import { opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const sheet = (number: number) => `xl/worksheets/sheet${number}.xml`;
const line = (number: number, more = "") => `<row r="${number}"${more}><c r="A${number}"><v>${number}</v></c></row>`;

/** A pivot table in A3:B6 that takes its numbers from a sheet with a sign in its name. */
const withPivot = workbookOf({
  sheets: { Sums: [1, 3, 4, 5, 6].map((one) => line(one)).join(""), "Oak &amp; Ash": row(1, '<c r="A1"><v>1</v></c>') + line(2) },
  names: "<definedName name=\"Prices\">'Oak &amp;amp; Ash'!$A$1:$A$2</definedName>".replace("&amp;amp;", "&#38;"),
  relations: `<Relationship Id="p1" Type="${office}/pivotCacheDefinition" Target="pivotCache/pivotCacheDefinition1.xml"/>`,
  parts: {
    "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="${office}/pivotTable" Target="../pivotTables/pivotTable1.xml"/></Relationships>`,
    "xl/pivotTables/pivotTable1.xml": `<pivotTableDefinition xmlns="${main}" name="P" cacheId="1"><location ref="A3:B6" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/></pivotTableDefinition>`,
    "xl/pivotCache/pivotCacheDefinition1.xml": `<pivotCacheDefinition xmlns="${main}"><cacheSource type="worksheet"><worksheetSource ref="A1:A2" sheet="Oak &#38; Ash"/></cacheSource></pivotCacheDefinition>`,
  },
});

describe("a pivot table", () => {
  const page = () => {
    const workbook = opened(withPivot, engine);
    const book = model(workbook.book);
    const [sheetId, other] = book.getters.getSheetIds();
    const lines = (base: number, dimension: "ROW" | "COL" = "ROW", position: "before" | "after" = "before") =>
      book.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName: "Sums", dimension, base, position, quantity: 1 });
    return { workbook, book, sheetId, other, lines };
  };

  it.each([
    ["a row", 3, "ROW"],
    ["the last row", 5, "ROW"],
    ["a column", 1, "COL"],
  ] as const)("lets %s not in through it", (_, base, dimension) => {
    const { lines, book, sheetId } = page();
    expect(lines(base, dimension).isCancelledBecause(pivotInTheWay as never)).toBe(true);
    expect(book.getters.getEvaluatedCell({ sheetId, col: 0, row: 3 }).value).toBe(4);
  });

  it("lets no line out of it, and goes as a whole", () => {
    const { book, sheetId } = page();
    const out = (...elements: number[]) => book.dispatch("REMOVE_COLUMNS_ROWS", { sheetId, sheetName: "Sums", dimension: "ROW", elements });
    expect(out(1, 2, 3).isSuccessful).toBe(false);
    expect(out(2, 3, 4, 5).isSuccessful).toBe(true);
  });

  it("moves down with what stands above it, in the file too, and is in the way at its new place", async () => {
    const { workbook, book, lines } = page();
    expect(lines(2).isSuccessful).toBe(true);
    const parts = textsOf(await saved(book, workbook, engine));
    expect(parts["xl/pivotTables/pivotTable1.xml"]).toContain('ref="A4:B7"');
    expect([lines(4).isSuccessful, lines(3).isSuccessful]).toEqual([false, true]);
  });

  it("finds its numbers on a sheet with a sign in its name, and so does a name", async () => {
    const { workbook, book, other } = page();
    book.dispatch("ADD_COLUMNS_ROWS", {
      sheetId: other,
      sheetName: "Oak & Ash",
      dimension: "ROW",
      base: 0,
      position: "before",
      quantity: 2,
    });
    const parts = textsOf(await saved(book, workbook, engine));
    expect(parts["xl/pivotCache/pivotCacheDefinition1.xml"]).toContain('ref="A3:A4"');
    expect(parts["xl/workbook.xml"]).toContain("'Oak &amp; Ash'!$A$3:$A$4</definedName>");
  });
});

describe("a group of rows", () => {
  const grouped = workbookOf({ sheets: { Sums: [line(1), line(2, ' outlineLevel="1"'), line(3, ' outlineLevel="1"'), line(4)].join("") } });

  it("that is folded is folded in the file, and unfolded the file is as it came", async () => {
    const workbook = opened(grouped, engine);
    const book = model(workbook.book);
    const [sheetId] = book.getters.getSheetIds();
    book.dispatch("FOLD_HEADER_GROUP", { sheetId, dimension: "ROW", start: 1, end: 2 });
    const file = await saved(book, workbook, engine);
    const rows = [...textsOf(file)[sheet(1)].matchAll(/<row [^>]*>/g)].map(([tag]) => tag);
    expect(rows).toEqual([
      '<row r="1">',
      '<row r="2" outlineLevel="1" hidden="1">',
      '<row r="3" outlineLevel="1" hidden="1">',
      '<row r="4" collapsed="1">',
    ]);
    const again = opened(file, engine);
    const other = model(again.book);
    other.dispatch("UNFOLD_HEADER_GROUP", { sheetId, dimension: "ROW", start: 1, end: 2 });
    const open = textsOf(await saved(other, again, engine))[sheet(1)];
    expect(open).not.toMatch(/hidden|collapsed/);
  });
});
