import { readFileSync } from "node:fs";
import { read } from "@e965/xlsx";
import { unzipSync } from "fflate";
import type { BrowserContext } from "playwright-core";
import { needing } from "../needing";
import { eachAs, type Sheet, type Site } from "./driver";

/** A cell that holds nothing, in a blank workbook and on the first sheet of the invented shop. */
const free = "K3";

const books = ({ page }: Sheet) => page.locator("#books");
const names = (sheet: Sheet) => books(sheet).locator("[data-book] strong").allTextContents();
const row = (sheet: Sheet, name: string) => books(sheet).locator(`[data-book="${name}"]`);
const press = (sheet: Sheet, name: string, button: string) =>
  row(sheet, name).getByRole("button", { name: button, exact: true }).first().click();
const said = ({ page }: Sheet) => page.locator("#books .said");

async function list(sheet: Sheet): Promise<void> {
  await sheet.page.locator("#workbooks").click();
  await books(sheet).locator("h2").waitFor();
}

const close = (sheet: Sheet) => books(sheet).getByRole("button", { name: "Close", exact: true }).click();

async function make(sheet: Sheet, words: string): Promise<void> {
  await list(sheet);
  await books(sheet).locator("select").selectOption({ label: words });
  await books(sheet).getByRole("button", { name: "Create" }).click();
  await said(sheet).getByText("It is open").waitFor();
  await close(sheet);
}

/** Changes what the browser keeps, as a fault of it would. */
const spoil = (sheet: Sheet, change: string): Promise<void> =>
  sheet.page.evaluate(
    (body) =>
      new Promise<void>((done, failed) => {
        const asked = indexedDB.open("porewise");
        asked.onerror = () => failed(asked.error);
        asked.onsuccess = () => {
          const transaction = asked.result.transaction("work", "readwrite");
          const records = transaction.objectStore("work");
          const all = records.getAllKeys();
          all.onsuccess = () => {
            const newest = all.result.filter((key: any) => key[0] === "version").sort((a: any, b: any) => b[2] - a[2])[0];
            if (body === "damage") records.put({ form: 1, book: "no book" }, newest);
            else if (body === "newer") records.put({ form: 99 }, newest);
          };
          transaction.oncomplete = () => {
            asked.result.close();
            done();
          };
        };
      }),
    change,
  );

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

  it("loses nothing that was saved when the disk is full, and says so", async () => {
    const poor = await made.stranger();
    const origin = made.served.address.replace(/\/$/, "");
    const door = await poor.newPage();
    await door.goto(`${origin}/page.css`);
    const session = await poor.newCDPSession(door);
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
    sheet = await made.visit(poor);
    await sheet.type(free, "before");
    await sheet.page.locator("#saved[data-state=full]").waitFor();
    expect(await sheet.page.locator("#saved").textContent()).toMatch(/^not saved: this browser has no room left/);
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    await sheet.type("K4", "room again");
    await sheet.kept();
    // The browser remembers for a while that there is room: from here on it is told otherwise at each writing.
    await sheet.page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await sheet.type(free, "after");
    await sheet.page.locator("#saved[data-state=full]").waitFor();
    await sheet.shows(free, "after");
    const other = await made.visit(poor);
    await other.shows(free, "before");
    await other.shows("K4", "room again");
    await poor.close();
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

  it("sets a damaged record aside, reports it and opens the version before", async () => {
    await sheet.kept();
    await sheet.keeps(() => sheet.type(free, "good"));
    await sheet.keeps(() => sheet.type(free, "spoilt"));
    await spoil(sheet, "damage");
    await sheet.reload();
    await sheet.page.locator("#ask-words").getByText("set aside").waitFor();
    await sheet.answer("OK");
    await sheet.shows(free, "good");
    await list(sheet);
    await books(sheet).getByText("Set aside because it could not be read").waitFor();
    const download = sheet.page.waitForEvent("download");
    await books(sheet).getByRole("button", { name: "Download as it is" }).click();
    expect(JSON.parse(readFileSync(await (await download).path(), "utf8"))).toEqual({ form: 1, book: "no book" });
  });

  it("neither shows nor changes what a newer page left", async () => {
    await sheet.kept();
    await spoil(sheet, "newer");
    await sheet.reload();
    await sheet.page.locator("#ask-words").getByText("saved by a newer Porewise").waitFor();
    await sheet.answer("OK");
    expect(await sheet.page.locator("#workbooks").textContent()).toBe("Invented shop");
    await list(sheet);
    expect(await names(sheet)).toContain("Blank workbook");
  });

  it("says so when the browser keeps nothing, and asks before work is lost", async () => {
    const poor = await made.stranger();
    await poor.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new Error("no room");
      };
    });
    const alone = await made.visit(poor);
    await alone.type(free, "1");
    await alone.page.locator("#saved[data-state=failed]").waitFor();
    expect(await alone.page.locator("#saved").textContent()).toMatch(/^not saved/);
    await list(alone);
    await said(alone).getByText("Save your work as a file").waitFor();
    await books(alone).getByRole("button", { name: "Create" }).click();
    await alone.answer("Stay");
    await said(alone).getByText("stays").waitFor();
    await close(alone);
    await alone.shows(free, "1");
    await poor.close();
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
