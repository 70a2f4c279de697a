import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { blanks, shop } from "../../src/demo";
import { findBrowser, launch } from "../../tool/browser";
import { buildPage } from "../../tool/page";
import { type Served, serve } from "../../tool/serve";
import { spill } from "../ask";
import { near } from "../within";

jest.setTimeout(60_000);

let folder: string;
let served: Served;
let browser: Browser;
let page: Page;
const troubles: string[] = [];
const requests: string[] = [];

/** Where J24 lies on the grid before anybody scrolls, in pixels. */
const middle = { J: 705, row24: 552 };

const cell = (address: string) => page.locator(`#mirror [data-cell="${address}"]`);
const words = (address: string) => cell(address).textContent();
const value = async (address: string) => (await cell(address).getAttribute("data-value")) ?? "";
const ready = () => page.waitForSelector("html[data-ready]");

async function shows(address: string, expected: string | RegExp): Promise<void> {
  const until = Date.now() + 5_000;
  for (;;) {
    const seen = (await words(address)) ?? "";
    if (typeof expected === "string" ? seen === expected : expected.test(seen)) return;
    if (Date.now() > until) throw new Error(`${address} shows “${seen}”, and ${expected} was due`);
    await page.waitForTimeout(50);
  }
}

/** Goes to a cell by the box that names it, as a person may. */
async function go(address: string): Promise<void> {
  const box = page.locator(".o-named-range-selector-container input");
  await box.click();
  await box.fill(address);
  await page.keyboard.press("Enter");
}

/** Keys come at a person's pace: faster ones can overtake the engine's editor. */
const keys = (typed: string) => page.keyboard.type(typed, { delay: 20 });

async function type(address: string, typed: string): Promise<void> {
  await go(address);
  await keys(typed);
  await page.keyboard.press("Enter");
}

async function visit(): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  page = await context.newPage();
  page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
  page.on("pageerror", (error) => troubles.push(String(error)));
  page.on("request", (request) => requests.push(request.url()));
  await page.goto(served.address);
  await ready();
}

(findBrowser() ? describe : describe.skip)("the page", () => {
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "page-"));
    await buildPage(folder);
    served = await serve(folder, { port: 0 });
    browser = await launch();
    await visit();
  });

  afterAll(async () => {
    await browser?.close();
    await served?.close();
    rmSync(folder, { recursive: true });
  });

  it("computes a hundred rows as the catalogue does", async () => {
    const of = <K extends keyof (typeof blanks)[number]>(key: K) => blanks.map((piece) => piece[key]);
    const gravities = spill("GRAVITY", of("species")).flat();
    const minutes = spill("BAKE", of("thickness"), of("width"), of("length"), gravities, Object.entries(shop)).flat();
    const moistures = spill("MOISTURE", of("weight"), of("dryWeight")).flat();
    const seen = await page.evaluate(() =>
      Object.fromEntries([...document.querySelectorAll<HTMLElement>("#mirror td")].map((td) => [td.dataset.cell, td.dataset.value])),
    );
    for (const [column, expected] of [
      ["J", moistures],
      ["N", minutes],
    ] as const)
      expected.forEach((one, i) => {
        const shown = seen[`${column}${i + 8}`];
        if (typeof one === "object") expect(shown).toBe(one.error);
        else near(Number(shown), one as number);
      });
  });

  it("says in a bad row what is wrong, and again when the pointer rests on it", async () => {
    expect(await words("J24")).toBe("#VALUE!: weight is lighter than when dry: weigh again");
    expect(await words("M31")).toContain("silver maple");
    const grid = (await page.locator(".o-grid-overlay").boundingBox())!;
    await page.mouse.move(grid.x + middle.J, grid.y + middle.row24, { steps: 3 });
    await page.locator(".o-error-tooltip").waitFor();
    expect(await page.locator(".o-error-tooltip").textContent()).toContain("weigh again");
    await page.mouse.move(5, 5);
  });

  it("helps while a formula is typed, and answers it", async () => {
    await go("P9");
    await keys("=PORE.FIL");
    await page.getByText("How much fluid covers the pieces?").waitFor();
    await keys("L(6,");
    await page.locator(".o-formula-assistant").getByText("stack").first().waitFor();
    await keys("5,104)");
    await page.keyboard.press("Enter");
    await shows("P9", "1.14");
    near(Number(await value("P9")), 1.136727329763616);
  });

  it("reads an inch mark as other programs write it", async () => {
    await type("P10", '=PORE.FILL(6,"1 1/2""",10)');
    await shows("P10", "1.05");
  });

  it("follows a weight that is put right", async () => {
    expect(await words("F4")).toBe("3");
    await type("H24", "19.8");
    await shows("J24", "3.7%");
    await shows("F4", "2");
  });

  it("keeps what was typed across a reload", async () => {
    await page.locator("#saved[data-state=kept]").waitFor();
    expect(await page.locator("#saved").textContent()).toMatch(/^saved \d\d:\d\d$/);
    await page.reload();
    await ready();
    await shows("P9", "1.14");
    await shows("J24", "3.7%");
  });

  it("starts afresh only when told so twice", async () => {
    await page.locator("#afresh").click();
    await page.getByRole("button", { name: "Keep my work" }).click();
    await shows("P9", "1.14");
    await page.locator("#afresh").click();
    const loaded = page.waitForEvent("load");
    await page.locator("#ask").getByRole("button", { name: "Start afresh" }).click();
    await loaded;
    await ready();
    await shows("P9", "");
    await shows("J24", /weigh again/);
  });

  it("goes round buttons, grid and pane on F6", async () => {
    await page.route("**/pane.html", (route) => route.fulfill({ contentType: "text/html", body: "<button>in the pane</button>" }));
    const where = () =>
      page.evaluate(() => {
        const at = document.activeElement!;
        return at.tagName === "IFRAME" ? "pane" : at.closest("#grid") ? "grid" : at.id;
      });
    await page.locator("#functions").click();
    await page.frameLocator("#pane iframe").getByText("in the pane").waitFor();
    expect(await where()).toBe("pane");
    const path: string[] = [];
    for (const key of ["F6", "F6", "F6", "Shift+F6", "Shift+F6"]) {
      await page.keyboard.press(key);
      path.push(await where());
    }
    expect(path).toEqual(["functions", "grid", "pane", "grid", "functions"]);
    await page.locator("#functions").click();
    expect(await page.locator("#pane").isVisible()).toBe(false);
  });

  it("shows the cautions of oven and resin beside the numbers", async () => {
    expect(await page.locator("#care").textContent()).toMatch(/Never an oven used for food.*Resin and catalyst: gloves/);
    await page.locator("#cautions").click();
    expect(await page.locator("#all-cautions li").count()).toBeGreaterThan(4);
    await page.keyboard.press("Escape");
  });

  it("says so when the browser keeps nothing", async () => {
    const context = await browser.newContext();
    await context.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new Error("no room");
      };
    });
    const kept = page;
    page = await context.newPage();
    await page.goto(served.address);
    await ready();
    await type("P9", "1");
    await page.locator("#saved[data-state=failed]").waitFor();
    expect(await page.locator("#saved").textContent()).toMatch(/^not saved/);
    await context.close();
    page = kept;
  });

  it("raises no error and asks no other server", () => {
    expect(troubles).toEqual([]);
    expect(requests.filter((url) => !url.startsWith(served.address) && !url.startsWith("data:"))).toEqual([]);
    expect(requests.length).toBeGreaterThan(8);
  });
});
