import type { Page } from "playwright-core";
import { needing } from "../needing";
import { eachExcelPane } from "./excelpane";

/** What the pane says of itself and of Excel, under the vendor's library; the Excel around it is ours. */
needing("browser")("the pane tells the truth in Excel", () => {
  const excel = eachExcelPane();
  let pane: Page;

  const open = async (ready: string, tab?: string, path = "taskpane.html") => {
    pane = await excel.open(path, ready);
    if (!tab) return;
    await pane.locator(`#tab-${tab}`).click();
    await pane.locator(`#panel-${tab} > *`).waitFor();
  };
  const warning = () => pane.locator('.notice[role="alert"]').allTextContents();

  it("greets once, with a formula to type and three to try", async () => {
    await open("beExcel()");
    const words = (await pane.locator("#welcome").textContent())!;
    expect(words).toContain("Type =PORE. in a cell");
    expect(await pane.locator("#welcome code").allTextContents()).toEqual([
      "=PORE.FILL(6,5,104)",
      expect.stringMatching(/^=PORE\.BAKE\(/),
      expect.stringMatching(/^=PORE\.GRAVITY\(/),
    ]);
    await pane.locator("#welcome-close").click();
    await pane.locator("#welcome").waitFor({ state: "detached" });
    const kept = JSON.stringify(await pane.evaluate(() => ({ ...localStorage })));
    await pane.context().close();
    await open(`Object.assign(localStorage, ${kept}); beExcel()`);
    await pane.locator("#tick-rated").waitFor();
    expect(await pane.locator("#welcome").count()).toBe(0);
  });

  it("spells its formulas as an Excel with a decimal comma takes them", async () => {
    await open("book.decimal = ','; beExcel()");
    expect(await pane.locator("#welcome code").first().textContent()).toBe("=PORE.FILL(6;5;104)");
  });

  it("says that a workbook counts from 1904, and nothing of one that does not", async () => {
    await open("book.from1904 = true; beExcel()");
    await pane.locator('.notice[role="alert"]').waitFor();
    expect(await warning()).toEqual([expect.stringContaining("counts days from 1904")]);
    await pane.context().close();
    await open("beExcel()");
    await pane.locator("#welcome").waitFor();
    expect(await warning()).toEqual([]);
  });

  it("says that the functions are of another version", async () => {
    await open("porewise = { ...porewise, version: '0.1.9' }; beExcel()");
    await pane.locator('.notice[role="alert"]').waitFor();
    expect(await warning()).toEqual([
      expect.stringMatching(/This pane is version [\d.]+ and the functions in cells are version 0\.1\.9\./),
    ]);
  });

  it.each([
    { platform: "PC", downloads: 1 },
    { platform: "Mac", downloads: 0 },
  ])("offers a download on $platform only where one starts", async ({ platform, downloads }) => {
    await open(`beExcel("${platform}")`, "workbook");
    await pane.locator("#open").waitFor();
    expect(await pane.locator("#download").count()).toBe(downloads);
    const words = (await pane.locator("#panel-workbook").textContent())!;
    expect(words.includes("open it as a new workbook and save that")).toBe(downloads === 0);
    expect(words).toContain("Inserting sheets clears Excel's Undo.");
    expect(words).toContain("People without Porewise then see an error from Excel about a missing add-in");
  });

  it("writes check marks once the person leaves, all in one, and says that Undo ends there", async () => {
    await open("beExcel()");
    for (const name of ["rated", "shield"]) await pane.locator(`#tick-${name}`).click();
    expect(await pane.evaluate(() => book.writes)).toBe(0);
    await pane.locator("#tab-working").click();
    await pane.waitForFunction(() => book.parts.length === 1 && (book.parts[0].xml.match(/"done":true/g) ?? []).length === 2);
    expect(await pane.evaluate(() => book.writes)).toBe(1);
    expect(await pane.locator("#panel-safety").textContent()).toContain("Excel's own Undo does not reach back past that.");
  });

  it("gives a date that it inserts the format of one", async () => {
    await open("beExcel()", undefined, "taskpane.html#EXPIRY");
    await pane.locator("#field-mixed").fill("2026-03-14");
    await pane.locator("#put").click();
    await pane.waitForFunction(() => book.sheet("Sheet1").cell(1, 1).formula);
    expect(await pane.evaluate(() => book.sheet("Sheet1").cell(1, 1))).toMatchObject({ format: expect.stringMatching(/yyyy/) });
  });
});
