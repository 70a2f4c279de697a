import { readFileSync } from "node:fs";
import type { BrowserContext } from "playwright-core";
import { needing } from "../needing";
import { books, close, list, names, said } from "./books";
import { eachAs, type Sheet, type Site } from "./driver";

/** A cell that holds nothing, in a blank workbook and on the first sheet of the invented shop. */
const free = "K3";

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

needing("browser")("the page whose keeping goes wrong", () => {
  let made: Site;
  let context: BrowserContext;
  let sheet: Sheet;

  eachAs("returning", async (around, own) => {
    [made, context] = [around, own];
    sheet = await made.visit(context);
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
});
