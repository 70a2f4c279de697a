import type { Page } from "playwright-core";
import { objections } from "../axe";
import { needing } from "../needing";
import { eachExcelPane } from "./excelpane";

needing("browser")("the pane in Excel's library", () => {
  const excel = eachExcelPane();
  let pane: Page;

  const open = async (path: string, ready: string) => {
    pane = await excel.open(path, ready);
  };

  it("opens over Excel, and keeps the safety list in its workbook", async () => {
    await open("taskpane.html", "beExcel()");
    await pane.locator("#tick-rated").click();
    await pane.waitForFunction(() => book.parts.length === 1);
    expect(await pane.evaluate(() => book.parts[0].xml)).toMatch(/^<checklist xmlns="urn:porewise:checklist" version="1">/);
  });

  it("tells the working of a cell that Excel calculated, and of none that it only previewed", async () => {
    await open("taskpane.html", "beExcel()");
    await pane.evaluate(() => {
      Object.assign(book.sheet("Sheet1").cell(1, 1), { formula: "=PORE.DYE(2)", value: 0.5 });
      book.ask("Sheet1!B2", "DYE", [[[2]], null, null]);
    });
    await pane.locator("#tab-working").click();
    await pane.waitForFunction(() => (globalThis as any).porewise.calls.at("Sheet1!B2", "=PORE.DYE(2)", 0.5));
    await pane.evaluate(() => book.tell(14, { address: "B2", worksheetId: book.sheets[0].Id }));
    await pane.waitForSelector("#working .call");
    expect(await pane.locator(".equation.numbers").textContent()).toBe("0.25 tsp per qt × 2 qt");
  });

  it("shows the function that Excel's help names, in a browser without Excel too", async () => {
    await open("taskpane.html#FILL", "sayReady({ host: null, platform: null })");
    expect(await pane.locator("#question").textContent()).toBe("How much resin covers the pieces?");
    await pane.locator("#field-chamber").fill("6");
    await pane.locator("#field-stack").fill("5");
    await pane.locator("#field-solids").fill("104");
    expect(await pane.locator("#answer").textContent()).toContain("1.14 qt");
    await pane.locator("#put").click();
    expect(await pane.locator(".said").textContent()).toContain("There is no sheet beside this page");
  });

  it("has nothing that axe objects to, and keeps the corner that Excel wants", async () => {
    await open("taskpane.html", "beExcel()");
    expect(await objections(pane)).toEqual([]);
    const corner = await pane.evaluate(() => document.elementFromPoint(innerWidth - 20, 16)?.tagName);
    expect(corner).toBe("HEADER");
  });
});
