import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { catalogue } from "../../src/catalogue";
import { cautionsOf } from "../../src/cautions";
import { findBrowser, launch } from "../../tool/browser";
import { bundled } from "../../tool/bundle";
import { openPage } from "../judge/office";

const root = join(__dirname, "../..");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

const withBrowser = findBrowser() ? describe : describe.skip;

withBrowser("the pane in Excel's library", () => {
  let browser: Browser;
  let page: Page;
  const troubles: string[] = [];

  beforeAll(async () => {
    const [functions, pane, opened] = await Promise.all([bundled("functions.js"), bundled("taskpane.js"), launch()]);
    browser = opened;
    const files = {
      "functions.js": functions,
      "taskpane.js": pane,
      "taskpane.html": readFileSync(join(root, "taskpane/taskpane.html")),
      "taskpane.css": readFileSync(join(root, "taskpane/taskpane.css")),
      ...Object.fromEntries([32, 64].map((side) => [`icons/mark-${side}.png`, readFileSync(join(root, `assets/mark-${side}.png`))])),
    };
    page = await openPage(browser, files, "taskpane.html#FILL", (trouble) => troubles.push(trouble));
    await page.setViewportSize({ width: 320, height: 800 });
    await page.waitForSelector("footer");
  }, 30_000);
  afterAll(() => browser?.close());

  it("lists every function by its question", async () =>
    expect(await page.locator("summary h3").allTextContents()).toEqual(catalogue.map(({ asks }) => asks)));

  it("opens the function that its address names", async () =>
    expect(await page.locator("details[open]").evaluateAll((open) => open.map(({ id }) => id))).toEqual(["FILL"]));

  it("tells source, accuracy and cautions of each", async () => {
    const entries = await page.locator("details").evaluateAll((all) => all.map(({ textContent }) => textContent));
    catalogue.forEach((contract, i) => {
      for (const words of [contract.source, contract.accuracy, ...cautionsOf(contract.cautions)]) expect(entries[i]).toContain(words);
    });
  });

  it("opens and closes an entry by the keyboard", async () => {
    const summary = page.locator("#FILL summary");
    await summary.press("Enter");
    expect(await page.locator("#FILL").getAttribute("open")).toBeNull();
    await summary.press("Enter");
    expect(await page.locator("#FILL").getAttribute("open")).not.toBeNull();
  });

  it("fits 320 pixels with every entry open", async () => {
    await page.locator("details").evaluateAll((all) => {
      for (const entry of all) entry.setAttribute("open", "");
    });
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(320);
  });

  it.each(["light", "dark"] as const)("has nothing that axe objects to, %s", async (colorScheme) => {
    await page.emulateMedia({ colorScheme });
    await page.evaluate(axe);
    const found = (await page.evaluate(
      "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ': ' + nodes[0].html))",
    )) as string[];
    expect(found).toEqual([]);
  });

  it("keeps its Content-Security-Policy and throws nothing", () => expect(troubles).toEqual([]));
});
