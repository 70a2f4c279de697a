import type { Browser, Page } from "playwright-core";
import { launch } from "../../tool/browser";
import { built, paneScripts } from "../built";
import { excelBook, openPage } from "./office";

/** Excel asks for its page with these scripts; the workbook at the other end is ours: see test/judge/excel. */
const page = built("taskpane.html")
  .toString()
  .replace('<script src="functions.js">', '<script src="ready.js"></script><script src="bridge.js"></script><script src="functions.js">');

const asBuilt = ["functions.js", "taskpane.css", "halt.js", "icons/mark-32.png", "workbook/porewise-live-us.xlsx"];

/** Opens the built pane as Excel does; `ready` says in a script what Excel is there. */
async function excelPane(browser: Browser, trouble: (words: string) => void) {
  const files = {
    ...Object.fromEntries([...asBuilt.map((name) => [name, built(name)] as const), ...paneScripts()]),
    "taskpane.html": page,
    "bridge.js": await excelBook(),
  };
  return async (path: string, ready: string): Promise<Page> => {
    const pane = await openPage(browser, files, path, trouble);
    await pane.setViewportSize({ width: 320, height: 800 });
    await pane.waitForFunction("globalThis.OfficeExtension?.HostBridge && globalThis.Excel && globalThis.beExcel");
    await pane.evaluate(ready);
    await pane.waitForSelector("pore-app");
    return pane;
  };
}

/** A browser for the tests around, in which each of them opens the pane; none may leave trouble behind. */
export function eachExcelPane(): { open(path: string, ready: string): Promise<Page> } {
  let browser: Browser;
  let opened: Awaited<ReturnType<typeof excelPane>>;
  let pane: Page;
  const troubles: string[] = [];
  beforeAll(async () => {
    browser = await launch();
    opened = await excelPane(browser, (trouble) => troubles.push(trouble));
  });
  afterAll(() => browser?.close());
  afterEach(async () => {
    expect(troubles.splice(0)).toEqual([]);
    await pane.context().close();
  });
  return {
    async open(path, ready) {
      pane = await opened(path, ready);
      return pane;
    },
  };
}
