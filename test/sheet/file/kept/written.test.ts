import "../dom";
import * as engine from "@odoo/o-spreadsheet";
import { unzipSync, zipSync } from "fflate";
import { model } from "../../../../sheet/engine";
import { opened } from "../../../../sheet/file/open";
import { saved } from "../../../../sheet/file/save";
import { f, row, textsOf, workbookOf } from "../workbooks";
import { first, partsOnce } from "./commands";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();
const file = workbookOf({
  sheets: {
    Costs: row(1, '<c r="A1"><v>2</v></c>', f("B1", "A1*2", "<v>4</v>")) + row(2, '<c r="A2"><v>3</v></c>', f("B2", "A2*2", "<v>6</v>")),
    Other: row(1, f("A1", "SUM(Costs!A1:A2)", "<v>5</v>")),
  },
  parts: { "custom/odd.bin": "\u0001 kept" },
});

describe("a file that was opened and saved", () => {
  it("with nothing changed is that file", async () => {
    const workbook = opened(file, engine);
    expect(await saved(model(workbook.book), workbook, engine)).toEqual(file);
  });

  it("with a cell changed has that cell, the values that follow from it, and all else as it was", async () => {
    const {
      [first]: xml,
      "xl/worksheets/sheet2.xml": other,
      ...rest
    } = await partsOnce(file, ["UPDATE_CELL", { col: 0, row: 0, content: "10" }]);
    const { [first]: old, "xl/worksheets/sheet2.xml": otherOld, ...before } = textsOf(file);
    expect(rest).toEqual(before);
    expect(xml).toBe(old.replace("<v>2</v>", "<v>10</v>").replace("<v>4</v>", "<v>20</v>"));
    expect(other).toBe(otherOld.replace("<v>5</v>", "<v>13</v>"));
  });

  it("with a row put in has its cells lower and every reference after them", async () => {
    const { [first]: xml, "xl/worksheets/sheet2.xml": other } = await partsOnce(file, [
      "ADD_COLUMNS_ROWS",
      { dimension: "ROW", base: 1, position: "before", quantity: 1 },
    ]);
    expect(xml).toContain('<c r="A3"><v>3</v></c>');
    expect(xml).toMatch(/<c r="B3"[^>]*><f>A3\*2<\/f><v>6<\/v>/);
    expect(other).toContain("SUM(Costs!A1:A3)");
  });
});

describe("a formula of a file", () => {
  const formulas = workbookOf({
    sheets: {
      Costs:
        row(1, '<c r="A1"><v>2</v></c>', f("B1", "SUM(Costs!$3:$4)", "<v>0</v>"), f("C1", "SUM( Other!A1 ,1)", "<v>1</v>")) +
        row(2, f("A2", "A1048576+1", "<v>1</v>")),
      Other: row(1, f("A1", "SUM(Costs!A:A)", "<v>2</v>")),
    },
  });

  it("says a sheet's new name and is spelled as it was", async () => {
    const { [first]: xml, "xl/worksheets/sheet2.xml": other } = await partsOnce(formulas, [
      "RENAME_SHEET",
      { oldName: "Costs", newName: "All costs" },
    ]);
    expect(xml).toBe(textsOf(formulas)[first].replace("SUM(Costs!$3:$4)", "SUM('All costs'!$3:$4)"));
    expect(other).toContain("<f>SUM('All costs'!A:A)</f><v>2</v>");
  });

  it("to a cell that is pushed past the last row is none", async () => {
    const { [first]: xml } = await partsOnce(formulas, [
      "ADD_COLUMNS_ROWS",
      { dimension: "ROW", base: 2, position: "before", quantity: 1 },
    ]);
    expect(xml).toContain('<c r="A2"><f>#REF!+1</f>');
  });

  it("that is typed over a whole column reaches all of it", async () => {
    const { [first]: xml } = await partsOnce(formulas, ["UPDATE_CELL", { col: 4, row: 0, content: "=SUM(B:B)+SUM(2:2)+SUM($B2:$C)" }]);
    expect(xml).toMatch(/<c r="E1"><f>SUM\(B:B\)\+SUM\(2:2\)\+SUM\(\$B2:\$C1048576\)<\/f>/);
  });
});

describe("a part of a file in UTF-16", () => {
  const parts = textsOf(file);
  const wide = new Uint8Array(
    Buffer.from(`\uFEFF<?xml version="1.0" encoding="UTF-16"?>${parts[first].replace(/^.*?\?>\s*/s, "")}`, "utf16le"),
  );
  const given = zipSync({ ...unzipSync(file), [first]: wide });

  it("is read, stays as it came while nothing is changed on it, and is spelled like all others once it is", async () => {
    const workbook = opened(given, engine);
    const book = model(workbook.book);
    expect(await saved(book, workbook, engine)).toEqual(given);
    const sheetId = book.getters.getSheetIds()[0];
    expect(book.dispatch("UPDATE_CELL", { sheetId, col: 0, row: 0, content: "10" }).isSuccessful).toBe(true);
    const { [first]: xml } = textsOf(await saved(book, workbook, engine));
    expect(xml).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>/);
    expect(xml).toContain('<c r="A1"><v>10</v></c>');
  });
});

describe("what is typed over", () => {
  const styles = textsOf(file)["xl/styles.xml"].replace(
    "</cellXfs>",
    '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" applyAlignment="1"><alignment horizontal="left"/></xf><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" applyAlignment="1"><alignment horizontal="right"/></xf></cellXfs>',
  );
  const sheet = "xl/worksheets/_rels/sheet1.xml.rels";
  const given = workbookOf({
    strings: ["words"],
    sheets: {
      Costs: `${row(1, '<c r="A1" s="2"><v>2</v></c>', '<c r="B1" s="3" t="s"><v>0</v></c>')}${row(2, '<c r="A2" s="2"><v>3</v></c>', '<c r="B2" t="s"><v>0</v></c>')}|<hyperlinks><hyperlink ref="B2" r:id="rId1" location="part" tooltip="more"/></hyperlinks>`,
    },
    parts: {
      "xl/styles.xml": styles,
      [sheet]:
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="https://shop.example/" TargetMode="External"/></Relationships>',
    },
  });

  it.each([
    ["a number at the left by words", { col: 0, row: 0, content: "words" }, '<c r="A1" s="2" t="inlineStr">'],
    ["words at the right by a number", { col: 1, row: 0, content: "7" }, '<c r="B1" s="3"><v>7</v>'],
    ["the words of a link", { col: 1, row: 1, content: "[other](https://shop.example/)" }, '<c r="B2" t="inlineStr">'],
  ])("%s: its sheet has the cell, and no other part is touched", async (_, cell, expected) => {
    const { [first]: xml, ...rest } = await partsOnce(given, ["UPDATE_CELL", cell]);
    const { [first]: old, ...before } = textsOf(given);
    expect(rest).toEqual(before);
    expect(xml).toContain(expected);
    expect(xml.slice(xml.indexOf("</sheetData>"))).toBe(old.slice(old.indexOf("</sheetData>")));
  });
});
