import { join } from "node:path";
import { build } from "esbuild";
import type { Browser, Page } from "playwright-core";
import type { SheetHost } from "../../shared/host";
import type { Platform } from "../../src/excel/insert";
import type { LastCalls } from "../../src/excel/lastcall";
import { launch } from "../../tool/browser";
import { excelBook, openPage } from "./office";

/** Excel's host under the vendor's own library. The workbook behind it is ours: see the folder excel for what it puts on. */
declare global {
  var host: SheetHost;
  var recorded: LastCalls;
  var begin: (platform: Platform) => void;
  var book: any;
}

const entry = `
  import { excelHost } from "./src/excel/host";
  import { LastCalls } from "./src/excel/lastcall";
  globalThis.begin = (platform) => {
    globalThis.recorded = new LastCalls();
    globalThis.host = excelHost({ platform, calls: globalThis.recorded });
  };`;

export interface HostInBrowser {
  /** The page with the host and the workbook behind it; there once the tests run. */
  readonly page: Page;
  /** Gives a cell such as "Sheet1!B2" a value, a formula or another property. */
  put(address: string, cell: object): Promise<void>;
  cellAt(address: string): Promise<object>;
  select(sheet: string, place: string): Promise<void>;
}

/** One browser and one page for all tests of a suite; the workbook is as new before each. */
export function hostInBrowser(): HostInBrowser {
  let browser: Browser;
  let page: Page;
  const troubles: string[] = [];

  beforeAll(async () => {
    browser = await launch();
    const { outputFiles } = await build({
      stdin: { contents: entry, resolveDir: join(__dirname, "../.."), loader: "ts" },
      bundle: true,
      format: "iife",
      write: false,
    });
    const files = { "functions.js": outputFiles[0].text, "bridge.js": await excelBook() };
    page = await openPage(browser, files, "judge.html", (trouble) => troubles.push(trouble));
    await page.waitForFunction("globalThis.OfficeExtension?.HostBridge && globalThis.Excel && globalThis.beExcel");
    await page.evaluate("beExcel(); begin('desktop')");
    await page.waitForFunction(() => book.registered.size >= 8);
  });
  afterAll(() => browser?.close());
  beforeEach(() =>
    page.evaluate(() => {
      book.reset();
      recorded.clear();
    }),
  );
  afterEach(() => expect(troubles.splice(0)).toEqual([]));

  return {
    get page() {
      return page;
    },
    put: (address, cell) =>
      page.evaluate(
        ([at, values]) => {
          const [name, place] = (at as string).split("!");
          const { sheet, row, column } = book.sheet(name).GetRange(place);
          Object.assign(sheet.cell(row, column), values);
        },
        [address, cell] as const,
      ),
    cellAt: (address) =>
      page.evaluate((at) => {
        const [name, place] = at.split("!");
        const { sheet, row, column } = book.sheet(name).GetRange(place);
        return sheet.cell(row, column);
      }, address),
    select: (sheet, place) => page.evaluate((place) => void Object.assign(book, { selected: place }), [sheet, place]),
  };
}
