import { readFileSync } from "node:fs";
import { read } from "@e965/xlsx";
import { unzipSync } from "fflate";
import type { BrowserContext } from "playwright-core";
import { needing } from "../needing";
import { books, close, list, make, names, press, said } from "./books";
import { eachAs, type Sheet, type Site } from "./driver";

/** A cell that holds nothing, in a blank workbook and on the first sheet of the invented shop. */
const free = "K3";

needing("browser")("the list of workbooks", () => {
  let made: Site;
  let context: BrowserContext;
  let sheet: Sheet;

  eachAs("returning", async (around, own) => {
    [made, context] = [around, own];
    sheet = await made.visit(context);
  });

  it("several workbooks by name, each with its own cells", async () => {
    await sheet.type(free, "1");
    await make(sheet, "SI units, empty");
    expect(await sheet.page.locator("#workbooks").textContent()).toBe("My workbook");
    await sheet.shows(free, "");
    await sheet.type(free, "2");
    await make(sheet, "blank: one empty sheet");
    await sheet.shows("A1", "");
    await list(sheet);
    expect(await names(sheet)).toEqual(["Blank workbook 2", "My workbook", "Blank workbook"]);
    await press(sheet, "Blank workbook", "Open");
    await sheet.shows(free, "1");
    await list(sheet);
    await press(sheet, "My workbook", "Rename");
    await sheet.page.keyboard.type("Winter batch");
    await sheet.page.keyboard.press("Enter");
    await said(sheet).getByText("Renamed.").waitFor();
    await press(sheet, "Winter batch", "Open");
    await sheet.shows(free, "2");
    await sheet.reload();
    await sheet.shows(free, "2");
    expect(await sheet.page.title()).toContain("Winter batch");
  });

  it("takes the first entry of a blank workbook, in the cell that is selected already", async () => {
    await sheet.page.locator(".o-grid-overlay").click({ position: { x: 40, y: 12 } });
    await sheet.keys("123");
    await sheet.page.keyboard.press("Enter");
    await sheet.shows("A1", "123");
  });

  it("gives a taken name a number, and copies", async () => {
    await list(sheet);
    await press(sheet, "Blank workbook", "Copy");
    await said(sheet).getByText("The copy is open").waitFor();
    expect(await names(sheet)).toEqual(["Blank workbook 2", "Blank workbook"]);
    await press(sheet, "Blank workbook", "Rename");
    await sheet.page.keyboard.type("BLANK workbook 2");
    await sheet.page.keyboard.press("Enter");
    await said(sheet).getByText("Renamed.").waitFor();
    expect(await names(sheet)).toContain("BLANK workbook 2 2");
  });

  it("gives everything as files, and deletes it when told so", async () => {
    await sheet.type(free, "11");
    await make(sheet, "blank: one empty sheet");
    await sheet.type("B2", "12");
    await list(sheet);
    const download = sheet.page.waitForEvent("download");
    await books(sheet).getByRole("button", { name: "Download all" }).click();
    const files = unzipSync(readFileSync(await (await download).path()));
    expect(Object.keys(files).sort()).toEqual(["Blank workbook 2.xlsx", "Blank workbook.xlsx"]);
    expect(read(files["Blank workbook 2.xlsx"]).Sheets.Sheet1.B2.v).toBe(12);
    expect(read(files["Blank workbook.xlsx"]).Sheets.Sheet1[free].v).toBe(11);
    await press(sheet, "Blank workbook 2", "Delete");
    await sheet.answer("Cancel");
    expect(await names(sheet)).toHaveLength(2);
    await press(sheet, "Blank workbook 2", "Delete");
    await sheet.answer("Delete");
    await said(sheet).getByText("is deleted").waitFor();
    expect(await names(sheet)).toEqual(["Blank workbook"]);
    await sheet.shows(free, "11");
    await books(sheet).getByRole("button", { name: "Delete everything" }).click();
    await sheet.answer("Delete everything");
    await said(sheet).getByText("Everything is deleted").waitFor();
    await close(sheet);
    await sheet.shows(free, "");
  });
});
