import type { BrowserContextOptions } from "playwright-core";
import { findBrowser } from "../../tool/browser";
import { type Sheet, type Site, site } from "./driver";

jest.setTimeout(240_000);

const tall = { width: 390, height: 844 };
const tablet = { width: 820, height: 1180 };
/** 1280 by 800 at 200 %. */
const doubled = { width: 640, height: 400 };

(findBrowser() ? describe : describe.skip)("the page where there is little room", () => {
  let made: Site;
  beforeAll(async () => {
    made = await site();
  });
  afterAll(async () => {
    await made?.close();
  });

  const visit = async (options: BrowserContextOptions) => made.visit(await made.browser.newContext(options));
  const touch = { hasTouch: true, isMobile: true };

  async function toSheet({ page }: Sheet): Promise<void> {
    const way = page.locator("#to-sheet");
    if (await way.isVisible()) await way.click();
    await page.locator("#grid .o-grid-overlay").waitFor();
  }

  describe.each([
    { what: "a phone", options: { viewport: tall, ...touch } },
    { what: "a tablet", options: { viewport: tablet, ...touch } },
    { what: "200 % zoom", options: { viewport: doubled, deviceScaleFactor: 2 } },
    { what: "a narrow phone", options: { viewport: { width: 320, height: 640 }, ...touch } },
  ])("$what", ({ options }) => {
    let sheet: Sheet;
    beforeAll(async () => {
      sheet = await visit(options);
      await toSheet(sheet);
    });
    afterAll(() => sheet.page.context().close());

    it("has every button of the menu within reach, over the picture of Start too", async () => {
      await sheet.page.locator("#more").click();
      for (const id of ["open", "save", "tools", "keys", "functions"]) await sheet.page.locator(`#${id}`).click({ trial: true });
      await sheet.page.locator("#more").click();
    });

    it("cuts nothing: no part reaches past the window", async () => {
      const { width } = options.viewport;
      const past = await sheet.page.evaluate(
        (most) =>
          [...document.querySelectorAll<HTMLElement>(".head, .head .button, .care, .work, .grid")]
            .filter(({ offsetParent }) => offsetParent)
            .filter((one) => one.getBoundingClientRect().right > most + 0.5)
            .map(({ id, className }) => id || className),
        width,
      );
      expect(past).toEqual([]);
      expect(await sheet.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    });

    it("leaves the sheet more than half of the height, whatever is frozen, and never says that the window is too small", async () => {
      const { height } = options.viewport;
      await sheet.page.locator(".o-sheet").getByText("Blanks", { exact: true }).click();
      await sheet.page.locator("#mirror caption").getByText("Blanks", { exact: true }).waitFor({ state: "attached" });
      const grid = (await sheet.page.locator(".o-grid-overlay").boundingBox())!;
      expect(grid.height).toBeGreaterThan(height * 0.5);
      // A row far down can be brought into sight: what stands still leaves room for it.
      await sheet.page.locator(".o-grid-overlay").hover();
      await sheet.page.mouse.wheel(0, 200);
      expect(await sheet.page.locator("#ask").isVisible()).toBe(false);
    });

    it("has one line of cautions that opens", async () => {
      const line = sheet.page.locator("#cautions");
      expect((await line.boundingBox())!.height).toBeLessThanOrEqual(44);
      await line.click();
      await sheet.page.locator("#all-cautions li").first().waitFor();
      await sheet.page.keyboard.press("Escape");
    });

    it("folds buttons and toolbar, and shows them at a press", async () => {
      const { page } = sheet;
      expect(await page.locator(".o-toolbar-tools").isVisible()).toBe(false);
      await page.locator("#more").click();
      expect(await page.locator("#open").isVisible()).toBe(true);
      await page.locator("#tools").click();
      await page.locator(".o-toolbar-tools").waitFor();
      expect(await page.locator("#open").isVisible()).toBe(false);
      await page.locator("#more").click();
      await page.locator("#tools").click();
      await page.locator(".o-toolbar-tools").waitFor({ state: "hidden" });
    });

    if ("hasTouch" in options)
      it("has targets of 44 pixels", async () => {
        await sheet.page.locator("#more").click();
        const small = await sheet.page.evaluate(() =>
          [...document.querySelectorAll<HTMLElement>(".head button, .care button, .o-sheet, .o-sheet-item, .ribbon-toggler")]
            .filter(({ offsetParent }) => offsetParent)
            .flatMap((one) => {
              const { width, height } = one.getBoundingClientRect();
              return Math.min(width, height) < 43.5 ? [`${one.id || one.className}: ${width} x ${height}`] : [];
            }),
        );
        expect(small).toEqual([]);
        await sheet.page.keyboard.press("Escape");
      });
  });

  it("says in words which file did not arrive, and the way out, where the page cannot start", async () => {
    const context = await made.stranger();
    const page = await context.newPage();
    await page.route("**/o_spreadsheet.min.iife.js", (route) => route.abort());
    await page.goto(made.served.address);
    await page.locator("#halt[data-failed]").waitFor();
    expect(await page.locator("#halt").textContent()).toMatch(/o_spreadsheet\.min\.iife\.js could not be loaded.*try again/);
    await page.unroute("**/o_spreadsheet.min.iife.js");
    await page.locator("#halt a").click();
    await page.waitForSelector("html[data-ready]");
    expect(await page.locator("#halt").isVisible()).toBe(false);
    await context.close();
  });

  it("opens a link at one press, and by keys", async () => {
    const sheet = await visit({ viewport: { width: 1280, height: 800 } });
    const { page } = sheet;
    const shown = (name: string) => page.locator("#mirror caption").getByText(name, { exact: true }).waitFor({ state: "attached" });
    const address = await page.locator("#mirror td").getByText("My Shop", { exact: true }).first().getAttribute("data-cell");
    await sheet.go(address!);
    // The handle at the corner of the selected cell says where it lies.
    const corner = (await page.locator(".o-autofill").boundingBox())!;
    await page.mouse.click(corner.x - 12, corner.y - 6);
    await shown("My Shop");
    await sheet.turn("Start");
    await sheet.go(address!);
    await page.keyboard.press("Control+Enter");
    await shown("My Shop");
    await page.context().close();
  });

  it("tells after an entry what it was and what followed in its row, and names the field that is typed into", async () => {
    const sheet = await visit({ viewport: { width: 1280, height: 800 } });
    const { page } = sheet;
    await sheet.turn("Blanks");
    const head = await page
      .locator("#mirror td[role=columnheader]")
      .getByText("thickness", { exact: true })
      .first()
      .getAttribute("data-cell");
    const [column, row] = [head!.replace(/\d/g, ""), Number(head!.replace(/\D/g, "")) + 1];
    await sheet.type(`${column}${row}`, "1");
    await page.locator("#spoken").getByText(`thickness, row ${row}: 1`).waitFor({ state: "attached" });
    expect(await page.locator("#spoken").textContent()).toMatch(/; bake \d+ min|; .+ \d/);
    await page.locator(`.o-grid-composer .o-composer[aria-label="thickness, row ${row + 1}"]`).waitFor({ state: "attached" });
    expect(await page.locator("#mirror [aria-current]").getAttribute("data-cell")).toBe(`${column}${row + 1}`);
    await page.context().close();
  });
});
