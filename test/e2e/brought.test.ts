import type { BrowserContext } from "playwright-core";
import { needing } from "../needing";
import { f, partsOf, row, workbookOf, zipOf } from "../sheet/file/workbooks";
import { eachAs, type Sheet, type Site } from "./driver";

const xlsx = (name: string, bytes: Uint8Array) => ({
  name: `${name}.xlsx`,
  mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  buffer: Buffer.from(bytes),
});

const v = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;

/** Three lines of a running total on a sheet of its own. */
const running = workbookOf({
  sheets: {
    Costs:
      row(1, v("A1", 2), f("B1", "SUM(A$1:A1)")) + row(2, v("A2", 3), f("B2", "SUM(A$1:A2)")) + row(3, v("A3", 4), f("B3", "SUM(A$1:A3)")),
  },
});

needing("browser")("what a person brings to the page", () => {
  let made: Site;
  let context: BrowserContext;
  let sheet: Sheet;
  const told = (words: string | RegExp) => sheet.page.locator("#ask-words").getByText(words).waitFor();
  const called = (name: string) => sheet.page.locator("#workbooks").getByText(name, { exact: true }).waitFor();

  eachAs("returning", async (around, own) => {
    [made, context] = [around, own];
    sheet = await made.visit(context);
  });

  it("a running total is kept, opens again and goes on", async () => {
    await sheet.give(xlsx("Totals", running));
    await called("Totals");
    await sheet.shows("B3", "9");
    await sheet.kept();
    await sheet.keeps(() => sheet.type("A2", "10"));
    await sheet.shows("B3", "16");
    await sheet.reload();
    await sheet.shows("B3", "16");
    await sheet.type("A1", "1");
    await sheet.shows("B1", "1");
    await sheet.shows("B3", "15");
  });

  it("the file as it was opened is a version to go back to, and what came after it stays one too", async () => {
    await sheet.give(xlsx("Totals", running));
    await called("Totals");
    await sheet.type("A1", "100");
    await sheet.shows("B3", "107");
    await sheet.kept();
    const back = async (version: number) => {
      await sheet.page.locator("#workbooks").click();
      const book = sheet.page.locator('#books [data-book="Totals"]');
      await book.locator("summary").click();
      await book.locator(".versions li").nth(version).getByRole("button", { name: "Go back to this" }).click();
    };
    await back(-1);
    await sheet.shows("B3", "9");
    await sheet.kept();
    await back(0);
    await sheet.shows("B3", "107");
  });

  it("sheets, names and cells of odd names open like any other, and so does every file after them", async () => {
    for (const name of ["__proto__", "constructor", "toString"]) {
      const names = `<definedName name="${name}">'${name}'!$A$1</definedName>`;
      await sheet.give(xlsx(`Odd ${name}`, workbookOf({ sheets: { [name]: row(1, v("A1", 2), f("B1", `${name}*3`)) }, names })));
      await called(`Odd ${name}`);
      await sheet.shows("B1", "6");
      await sheet.kept();
      await sheet.reload();
      await sheet.shows("B1", "6");
    }
    await sheet.give(xlsx("After", running));
    await called("After");
    await sheet.shows("B3", "9");
  });

  it("two sheets of one name, a far cell and a damaged file are refused in words, and the page stays as it was", async () => {
    const before = (await sheet.page.locator("#workbooks").textContent())!;
    const double = partsOf({ sheets: { A: "", B: "" } });
    double["xl/workbook.xml"] = double["xl/workbook.xml"].replace('name="B"', 'name="A"');
    const refused: readonly (readonly [Uint8Array, RegExp])[] = [
      [zipOf(double), /two of its sheets are called A/],
      [workbookOf({ sheets: { A: row(1_048_576, v("XFD1048576", 1)) } }), /reach too far/],
      [running.slice(0, 900), /damaged/],
    ];
    for (const [bytes, words] of refused) {
      await sheet.give(xlsx("Bad", bytes));
      await told(words);
      await sheet.answer("OK");
      expect(await sheet.page.locator("#workbooks").textContent()).toBe(before);
    }
    await sheet.type("K3", "7");
    await sheet.shows("K3", "7");
  });

  it("formulas that would fill a memory show an error, and the rest of the workbook is there", async () => {
    const heavy = ["SEQUENCE(1000000,1000000)", "SUM(SEQUENCE(1000000000))"].map((formula, i) => f(`${"BC"[i]}1`, formula));
    await sheet.give(xlsx("Heavy", workbookOf({ sheets: { A: row(1, v("A1", 5), ...heavy) } })));
    await called("Heavy");
    await sheet.shows("B1", /^#NUM!/);
    await sheet.shows("A1", "5");
    await sheet.kept();
  });

  it("nothing that was shown as saved is lost by a tab that is killed twenty times in mid-save", async () => {
    await sheet.give(xlsx("Totals", running));
    await called("Totals");
    await sheet.kept();
    let saved = 0;
    /** Hears from now on how keeping stands, and when something is written. */
    const listening = async () => {
      const heard = await sheet.hear();
      await sheet.page.evaluate(() => {
        const { put } = IDBObjectStore.prototype;
        const written = new Promise<void>((done) => {
          IDBObjectStore.prototype.put = function (...all) {
            done();
            return put.apply(this, all);
          };
        });
        Object.assign(globalThis, { written });
      });
      return { heard, written: () => sheet.page.evaluate(() => (globalThis as unknown as { written: Promise<void> }).written) };
    };
    // Before it is written, while it is, and after.
    const moments: readonly ((to: Awaited<ReturnType<typeof listening>>) => Promise<unknown>)[] = [
      ({ heard }) => heard("waiting"),
      ({ written }) => written(),
      ({ heard, written }) => heard("waiting").then(written),
      ({ heard }) => heard("waiting", "kept"),
    ];
    for (let round = 1; round <= 20; round++) {
      await sheet.go("D1");
      await sheet.keys(String(round));
      const to = await listening();
      await sheet.page.keyboard.press("Enter");
      await moments[round % 4](to);
      if (round % 4 === 3) saved = round;
      const session = await context.newCDPSession(sheet.page);
      const crash = sheet.page.waitForEvent("crash");
      session.send("Page.crash").catch(() => undefined);
      await crash;
      await sheet.page.close();
      sheet = await made.visit(context);
      await sheet.shows("A1", "2");
      const found = Number((await sheet.words("D1")) ?? "");
      expect(found).toBeGreaterThanOrEqual(saved);
      expect(found).toBeLessThanOrEqual(round);
      saved = found;
    }
    expect(saved).toBeGreaterThan(0);
    // Twenty pages are opened one after another.
  }, 600_000);
});
