import type { Browser, Page } from "playwright-core";
import { built, paneScripts } from "../built";
import { excelBook, openPage } from "./office";

/** Excel asks for its page with these scripts; the workbook at the other end is ours: see test/judge/excel. */
const page = built("taskpane.html")
  .toString()
  .replace('<script src="functions.js">', '<script src="ready.js"></script><script src="bridge.js"></script><script src="functions.js">');

const asBuilt = ["functions.js", "taskpane.css", "halt.js", "icons/mark-32.png", "workbook/porewise-live-us.xlsx"];

/** Opens the built pane as Excel does; `ready` says in a script what Excel is there. */
export async function excelPane(browser: Browser, trouble: (words: string) => void) {
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
