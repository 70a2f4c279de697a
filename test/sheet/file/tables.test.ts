import "./dom";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { addresses } from "../addresses";
import { cellIn, f, row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const text = (address: string, words: string) => `<c r="${address}" t="inlineStr"><is><t>${words}</t></is></c>`;
const number = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;
const table = "xl/tables/table1.xml";
const [first, second] = ["xl/worksheets/sheet1.xml", "xl/worksheets/sheet2.xml"];
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** A table with a column that it calculates and a row of totals, and formulas that speak of it, as Excel writes them. */
const file = workbookOf({
  sheets: {
    Stock:
      `${row(2, text("B2", "piece"), text("C2", "cost"), text("D2", "twice"))}` +
      `${row(3, text("B3", "Ash"), number("C3", 4), f("D3", "Pieces[[#This Row],[cost]]*2", "<v>8</v>"))}` +
      `${row(4, text("B4", "Elm"), number("C4", 5), f("D4", "Pieces[[#This Row],[cost]]*2", "<v>10</v>"))}` +
      `${row(5, text("B5", "Total"), f("C5", "SUBTOTAL(109,Pieces[cost])", "<v>9</v>"))}` +
      `|<tableParts count="1"><tablePart r:id="t1"/></tableParts>`,
    Sums: row(1, f("A1", "SUM(Pieces[cost])", "<v>9</v>"), f("B1", 'SUM(Pieces[[cost]:[twice]])&"[cost]"', "<v>0</v>")),
  },
  names: '<definedName name="costs">Pieces[cost]</definedName>',
  parts: {
    "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="t1" Type="${office}/table" Target="../tables/table1.xml"/></Relationships>`,
    [table]: `<table xmlns="${main}" id="1" name="Pieces" displayName="Pieces" ref="B2:D5" totalsRowCount="1"><autoFilter ref="B2:D4"/><tableColumns count="3"><tableColumn id="1" name="piece" totalsRowLabel="Total"/><tableColumn id="2" name="cost" totalsRowFunction="sum"/><tableColumn id="3" name="twice"><calculatedColumnFormula>Pieces[[#This Row],[cost]]*2</calculatedColumnFormula></tableColumn></tableColumns><tableStyleInfo name="TableStyleLight1" showRowStripes="1"/></table>`,
  },
});

type Command = readonly [type: string, payload: object];
const typed = (address: string, content: string): Command => ["UPDATE_CELL", { ...addresses(address), content }];

async function changedBy(...commands: readonly Command[]): Promise<Record<string, string>> {
  const workbook = opened(file, engine);
  const book = model(workbook.book);
  const sheetId = book.getters.getSheetIds()[0];
  for (const [type, payload] of commands)
    expect([type, book.dispatch(type as never, { sheetId, sheetName: "Stock", ...payload } as never).isSuccessful]).toEqual([type, true]);
  return textsOf(await saved(book, workbook, engine));
}

const columns = (xml: string) => [...xml.matchAll(/<tableColumn [^>]*?\sname="([^"]*)"/g)].map(([, name]) => name);
const rowsOut = (...elements: number[]): Command => ["REMOVE_COLUMNS_ROWS", { dimension: "ROW", elements }];

describe("a header of a table that was typed over", () => {
  it("names its column, and every formula speaks of it by the new name", async () => {
    const parts = await changedBy(typed("C2", "price & [each]"));
    expect(columns(parts[table])).toEqual(["piece", "price &amp; [each]", "twice"]);
    expect(parts[table]).toContain("<calculatedColumnFormula>Pieces[[#This Row],[price &amp; '[each']]]*2</calculatedColumnFormula>");
    expect(cellIn(parts[first], "D3")).toContain("<f>Pieces[[#This Row],[price &amp; '[each']]]*2</f><v>8</v>");
    expect(cellIn(parts[first], "C5")).toContain("SUBTOTAL(109,Pieces[price &amp; '[each']])");
    expect(cellIn(parts[second], "A1")).toContain("SUM(Pieces[price &amp; '[each']])");
    expect(cellIn(parts[second], "B1")).toContain("SUM(Pieces[[price &amp; '[each']]:[twice]])&amp;&quot;[cost]&quot;");
    expect(parts["xl/workbook.xml"]).toContain(">Pieces[price &amp; '[each']]</definedName>");
  });

  it.each([
    ["line ends", "the\nprice", "the_x000a_price", "the\nprice"],
    ["a name that another column has", "PIECE", "PIECE2", "PIECE2"],
    ["nothing", "", "Column1", "Column1"],
    ["a number", "2026", "2026", "2026"],
    ["a formula", '="a"&1', "a1", "a1"],
  ])("is a text that no other column has: %s", async (_, content, name, shown) => {
    const parts = await changedBy(typed("C2", content));
    expect(columns(parts[table])).toEqual(["piece", name, "twice"]);
    expect(cellIn(parts[first], "C2")).toMatch(/t="inlineStr"/);
    expect(cellIn(parts[first], "C2")).toContain(`>${shown}</t>`);
  });

  it("of two that changed names each has the other's", async () => {
    const parts = await changedBy(typed("B2", "cost"), typed("C2", "piece"));
    expect(columns(parts[table])).toEqual(["cost", "piece", "twice"]);
    expect(cellIn(parts[second], "A1")).toContain("SUM(Pieces[piece])");
  });
});

it("a total that was typed over is what the table says of it", async () => {
  const parts = await changedBy(typed("B5", "Sum of all"), typed("C5", "=MAX(C3:C4)"));
  expect(parts[table]).toContain('<tableColumn id="1" name="piece" totalsRowLabel="Sum of all"/>');
  expect(parts[table]).toContain('totalsRowFunction="custom"><totalsRowFormula>MAX(C3:C4)</totalsRowFormula></tableColumn>');
});

describe("a table whose rows or columns were taken out", () => {
  it("has no header where that row went, and no filter", async () => {
    const parts = await changedBy(rowsOut(1));
    expect(parts[table]).toMatch(/ref="B2:D4"[^>]*headerRowCount="0"/);
    expect(parts[table]).not.toContain("autoFilter");
  });

  it("has no totals where that row went", async () => {
    const parts = await changedBy(rowsOut(4));
    expect(parts[table]).not.toContain("totalsRowCount");
    expect(parts[table]).toContain('<autoFilter ref="B2:D4"/>');
  });

  it("has a blank row where all between header and totals went", async () => {
    const parts = await changedBy(rowsOut(2, 3, 4));
    expect(parts[table]).toMatch(/ref="B2:D3"[^>]*insertRow="1"/);
    expect(parts[table]).toContain('<autoFilter ref="B2:D3"/>');
  });

  it("goes with the last of them, and formulas say that it is gone", async () => {
    const parts = await changedBy(rowsOut(1, 2, 3, 4));
    expect(Object.keys(parts).filter((path) => path.includes("tables/"))).toEqual([]);
    expect(parts[first]).not.toContain("tablePart");
    expect(parts["[Content_Types].xml"]).not.toContain("table1");
    expect(cellIn(parts[second], "A1")).toContain("<f>SUM(#REF!)</f>");
  });

  it("is spoken of by no column that went", async () => {
    const parts = await changedBy(["REMOVE_COLUMNS_ROWS", { dimension: "COL", elements: [2] }]);
    expect(columns(parts[table])).toEqual(["piece", "twice"]);
    expect(parts[table]).toContain("<calculatedColumnFormula>#REF!*2</calculatedColumnFormula>");
    expect(cellIn(parts[second], "A1")).toContain("<f>SUM(#REF!)</f>");
  });
});

it("a copy of a sheet speaks of its own table", async () => {
  const parts = await changedBy(["DUPLICATE_SHEET", { sheetIdTo: "copy", sheetNameTo: "Stock again" }]);
  expect(cellIn(parts["xl/worksheets/sheet3.xml"], "D3")).toContain("Pieces_2[[#This Row],[cost]]*2");
  expect(parts["xl/tables/table2.xml"]).toContain("<calculatedColumnFormula>Pieces_2[[#This Row],[cost]]*2</calculatedColumnFormula>");
  expect(cellIn(parts[first], "D3")).toContain("Pieces[[#This Row],[cost]]*2");
});

describe("a table that the page changed", () => {
  const range = (of: string) => ({ _sheetId: "sheet1", _zone: addressesOf(of) });
  const addressesOf = (of: string) => {
    const [from, to] = of.split(":").map(addresses);
    return { top: from.row, left: from.col, bottom: to.row, right: to.col };
  };

  it("is a part of its own where it was made, and its columns are named in its cells", async () => {
    const config = { numberOfHeaders: 1, hasFilters: true, totalRow: false, firstColumn: false, lastColumn: false };
    const parts = await changedBy(typed("B8", "wood"), [
      "CREATE_TABLE",
      {
        tableType: "static",
        ranges: [range("B8:C10")],
        config: { ...config, bandedRows: true, bandedColumns: false, styleId: "TableStyleMedium5" },
      },
    ]);
    const made = parts["xl/tables/table2.xml"];
    expect(columns(made)).toEqual(["wood", "Column1"]);
    expect(made).toContain('id="2" name="Table2" displayName="Table2" ref="B8:C10"');
    expect(made).toContain('<autoFilter ref="B8:C10"/>');
    expect(cellIn(parts[first], "C8")).toContain(">Column1</t>");
    expect(parts[first]).toMatch(/<tableParts count="2"><tablePart r:id="t1"\/><tablePart r:id="(\w+)"[^>]*\/><\/tableParts>/);
    expect(parts["[Content_Types].xml"]).toContain("/xl/tables/table2.xml");
  });

  it("leaves its cells where it was taken away, and formulas speak of them", async () => {
    const parts = await changedBy(["REMOVE_TABLE", { target: [addressesOf("B2:D5")] }]);
    expect(Object.keys(parts).filter((path) => path.includes("tables/"))).toEqual([]);
    expect(cellIn(parts[second], "A1")).toContain("SUM('Stock'!$C$3:$C$4)");
    expect(cellIn(parts[first], "D4")).toContain("$C$4*2");
  });

  it("that was made narrower has fewer columns, and formulas say which are gone", async () => {
    const parts = await changedBy(["UPDATE_TABLE", { zone: addressesOf("B2:D5"), newTableRange: range("B2:C5") }]);
    expect(columns(parts[table])).toEqual(["piece", "cost"]);
    expect(parts[table]).toMatch(/ref="B2:C5".*<autoFilter ref="B2:C4"\/>/s);
    expect(cellIn(parts[second], "B1")).toContain("SUM(#REF!)");
  });
});
