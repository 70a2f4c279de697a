import "./dom";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { f, row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const first = "xl/worksheets/sheet1.xml";
const file = workbookOf({
  sheets: {
    Costs: row(1, '<c r="A1"><v>2</v></c>', f("B1", "A1*2", "<v>4</v>")) + row(2, '<c r="A2"><v>3</v></c>', f("B2", "A2*2", "<v>6</v>")),
    Other: row(1, f("A1", "SUM(Costs!A1:A2)", "<v>5</v>")),
  },
  parts: { "custom/odd.bin": "\u0001 kept" },
});

/** The parts of the file after something was done to it on the page. */
async function partsOnce(type: string, payload: object): Promise<Record<string, string>> {
  const workbook = opened(file, engine);
  const book = model(workbook.book);
  const sheetId = book.getters.getSheetIds()[0];
  if (type) expect(book.dispatch(type as never, { sheetId, sheetName: "Costs", ...payload } as never).isSuccessful).toBe(true);
  return textsOf(await saved(book, workbook, engine));
}

describe("a file that was opened and saved", () => {
  it("with nothing changed is that file", async () => {
    const workbook = opened(file, engine);
    expect(await saved(model(workbook.book), workbook, engine)).toEqual(file);
  });

  it("with a cell changed has that cell, the values that follow from it, and all else as it was", async () => {
    const { [first]: xml, "xl/worksheets/sheet2.xml": other, ...rest } = await partsOnce("UPDATE_CELL", { col: 0, row: 0, content: "10" });
    const { [first]: old, "xl/worksheets/sheet2.xml": otherOld, ...before } = textsOf(file);
    expect(rest).toEqual(before);
    expect(xml).toBe(old.replace("<v>2</v>", "<v>10</v>").replace("<v>4</v>", "<v>20</v>"));
    expect(other).toBe(otherOld.replace("<v>5</v>", "<v>13</v>"));
  });

  it("with a row put in has its cells lower and every reference after them", async () => {
    const { [first]: xml, "xl/worksheets/sheet2.xml": other } = await partsOnce("ADD_COLUMNS_ROWS", {
      ...{ dimension: "ROW", base: 1, position: "before", quantity: 1 },
    });
    expect(xml).toContain('<c r="A3"><v>3</v></c>');
    expect(xml).toMatch(/<c r="B3"[^>]*><f>A3\*2<\/f><v>6<\/v>/);
    expect(other).toContain("SUM(Costs!A1:A3)");
  });
});
