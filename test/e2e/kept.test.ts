import type { BrowserContext } from "playwright-core";
import { needing } from "../needing";
import { books, close, list, names, press, row, said } from "./books";
import { eachAs, type Sheet, type Site } from "./driver";

/** A cell that holds nothing, in a blank workbook and on the first sheet of the invented shop. */
const free = "K3";

needing("browser")("the page keeps work", () => {
  let made: Site;
  let context: BrowserContext;
  let sheet: Sheet;

  eachAs("returning", async (around, own) => {
    [made, context] = [around, own];
    sheet = await made.visit(context);
  });

  it("soon after the last change, whatever becomes of the page", async () => {
    await sheet.kept();
    await sheet.keeps(() => sheet.type(free, "42"));
    expect(await sheet.page.locator("#saved").textContent()).toMatch(/^saved \d{1,2}:\d\d [AP]M$/);
    // A tab that is killed runs nothing any more.
    const session = await context.newCDPSession(sheet.page);
    const crash = sheet.page.waitForEvent("crash");
    session.send("Page.crash").catch(() => undefined);
    await crash;
    sheet = await made.visit(context);
    await sheet.shows(free, "42");
  });

  it("keeps what was typed just before a reload", async () => {
    await sheet.kept();
    await sheet.type(free, "7");
    await sheet.reload();
    await sheet.shows(free, "7");
  });

  it("takes a half-typed cell along when the page is left", async () => {
    await sheet.kept();
    await sheet.go(free);
    await sheet.keys("half");
    await sheet.reload();
    await sheet.shows(free, "half");
  });

  it("tells a second tab that the workbook was deleted in the first, and brings nothing of it back", async () => {
    await sheet.kept();
    const second = await made.visit(context);
    await second.page.locator('#saved[data-state="read only"]').waitFor();
    await list(sheet);
    await press(sheet, "Blank workbook", "Delete");
    await sheet.answer("Delete");
    await said(sheet).getByText("is deleted").waitFor();
    await second.page.locator("#ask-words").getByText("it was deleted").waitFor();
    await second.answer("OK");
    expect(await names(sheet)).toEqual(["Invented shop"]);
    await books(sheet).locator("h3").waitFor({ state: "detached" });
  });

  it("ten versions to go back to, and forward again", async () => {
    await sheet.kept();
    for (let i = 1; i <= 12; i++) {
      await sheet.keeps(() => sheet.type(free, String(i)));
    }
    await list(sheet);
    const versions = row(sheet, "Blank workbook").locator(".versions li");
    // The last version of a five-minute spell, and of a day, stays too: where the clock passes one on the way there is one more. The file as it was opened is the last.
    const count = await versions.count();
    expect(count).toBeGreaterThanOrEqual(10);
    expect(count).toBeLessThanOrEqual(12);
    await row(sheet, "Blank workbook").locator("summary").click();
    await versions.nth(4).getByRole("button", { name: "Go back to this" }).click();
    await sheet.shows(free, "7");
    await list(sheet);
    await row(sheet, "Blank workbook").locator("summary").click();
    await row(sheet, "Blank workbook").locator(".versions li").nth(0).getByRole("button", { name: "Go back to this" }).click();
    await sheet.shows(free, "12");
  });

  it("opens in a second tab to be read only, and lets it change once the first is gone", async () => {
    await sheet.keeps(() => sheet.type(free, "first"));
    const second = await made.visit(context);
    expect(await second.page.locator("#saved").textContent()).toBe("open in another tab: here it can only be read");
    await second.shows(free, "first");
    await second.page.locator(".o-grid-overlay").click({ position: { x: 900, y: 90 } });
    await second.keys("zzz");
    await second.page.keyboard.press("Enter");
    expect(await second.page.locator("#mirror").textContent()).not.toContain("zzz");
    await list(second);
    await press(second, "Blank workbook", "Delete");
    await second.answer("Delete");
    await said(second).getByText("open in another tab").waitFor();
    await close(second);
    await sheet.keeps(() => sheet.type("K4", "last words"));
    await sheet.page.close();
    await second.page.locator("#saved[data-state=kept]").waitFor();
    await second.shows("K4", "last words");
    await second.type(free, "second");
    await second.shows(free, "second");
  });
});
