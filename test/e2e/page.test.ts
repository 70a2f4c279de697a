import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../sheet/engine";
import "../../sheet/headless";
import { saved } from "../../sheet/file/save";
import { blanks, shop } from "../../src/demo";
import { spill } from "../ask";
import { objections } from "../axe";
import { needing } from "../needing";
import { hundred } from "../sheet/hundred";
import { near } from "../within";
import { type Sheet, type Site, site } from "./driver";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

/** Where J24 lies on a grid of the usual widths before anybody scrolls, in pixels. */
const middle = { J: 9.5 * 96, row24: 23.5 * 23 };

const sheets = [
  "Start",
  "My Shop",
  "Blanks",
  "Today",
  "Loads",
  "Price Tag",
  "Resin Book",
  "Supplies",
  "Run Log",
  "Safety",
  "Labels",
  "Handout",
  "Self-check",
  "Woods",
];

needing("browser")("the page", () => {
  let made: Site;
  let sheet: Sheet;
  const words = (address: string) => sheet.words(address);

  beforeAll(async () => {
    made = await site();
    sheet = await made.visit();
  });
  afterAll(async () => {
    await made?.close();
  });

  it("opens on the workbook, every worked example agreeing", async () => {
    const { page } = sheet;
    expect(await page.locator("#workbooks").textContent()).toBe("Invented shop");
    expect(await page.locator("#mirror").textContent()).toMatch(/Porewise [\d.]+\d\. Self-check compares/);
    await sheet.turn("Self-check");
    expect(await page.locator("#mirror").textContent()).toMatch(/Porewise \S+: (\d+) of \1 agree/);
    for (const name of sheets) {
      await sheet.turn(name);
      expect(await page.locator("#mirror").textContent()).not.toMatch(/#NAME\?|#ERROR|#BAD_EXPR/);
    }
  });

  it("shows its charts", async () => {
    const { page } = sheet;
    await sheet.turn("Loads");
    await sheet.go("F30");
    await page.locator(".o-figure canvas").first().waitFor({ state: "attached" });
  });

  it("opens a sheet of a hundred blanks and computes each row as the catalogue does", async () => {
    const buffer = Buffer.from(await saved(model(hundred()), { documents: {}, print: {} }, engine));
    await sheet.give({ name: "hundred.xlsx", mimeType: "", buffer });
    await sheet.shows("A8", "P-001");
    expect(await sheet.page.locator(".o-toolbar-tools").isVisible()).toBe(true);
    const of = <K extends keyof (typeof blanks)[number]>(key: K) => blanks.map((piece) => piece[key]);
    const gravities = spill("GRAVITY", of("species")).flat();
    const minutes = spill("BAKE", of("thickness"), of("width"), of("length"), gravities, Object.entries(shop)).flat();
    const moistures = spill("MOISTURE", of("weight"), of("dryWeight")).flat();
    const seen = await sheet.page.evaluate(() =>
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
    const { page } = sheet;
    expect(await words("J24")).toBe("#VALUE!: weight is lighter than when dry: weigh again");
    expect(await words("M31")).toContain("silver maple");
    const grid = (await page.locator(".o-grid-overlay").boundingBox())!;
    await page.mouse.move(grid.x + middle.J, grid.y + middle.row24, { steps: 3 });
    await page.locator(".o-error-tooltip").waitFor();
    expect(await page.locator(".o-error-tooltip").textContent()).toContain("weigh again");
    await page.mouse.move(5, 5);
  });

  it("helps while a formula is typed, and answers it", async () => {
    await sheet.go("P9");
    await sheet.keys("=PORE.FIL");
    await sheet.page.getByText("How much resin covers the pieces?").waitFor();
    await sheet.keys("L(6,");
    await sheet.page.locator(".o-formula-assistant").getByText("stack").first().waitFor();
    await sheet.keys("5,104)");
    await sheet.page.keyboard.press("Enter");
    await sheet.shows("P9", "1.14");
    near(Number(await sheet.value("P9")), 1.136727329763616);
  });

  it("reads an inch mark as other programs write it", async () => {
    await sheet.type("P10", '=PORE.FILL(6,"1 1/2""",10)');
    await sheet.shows("P10", "1.05");
  });

  it("follows a weight that is put right", async () => {
    expect(await words("F4")).toBe("3");
    await sheet.type("H24", "19.8");
    await sheet.shows("J24", "3.7%");
    await sheet.shows("F4", "2");
  });

  it("shows the same sheet again after a reload, with what was typed", async () => {
    await sheet.turn("My Shop");
    await sheet.turn("Blanks");
    await sheet.keeps(() => sheet.type("P11", "1"));
    await sheet.reload();
    await sheet.shows("P9", "1.14");
    await sheet.shows("J24", "3.7%");
  });

  it("goes round buttons, menus, cells, sheets, pane and cautions on F6, and back to the cells on Escape", async () => {
    const { page } = sheet;
    await page.route("**/pane.html", (route) => route.fulfill({ contentType: "text/html", body: "<button>in the pane</button>" }));
    const where = () =>
      page.evaluate(() => {
        const at = document.activeElement!;
        if (at.tagName === "IFRAME") return "pane";
        return at.closest(".o-topbar-menu") ? "menus" : at.closest(".o-sheet") ? "sheets" : at.closest("#grid") ? "cells" : at.id;
      });
    await page.locator("#functions").click();
    await page.frameLocator("#pane iframe").getByText("in the pane").waitFor();
    expect(await where()).toBe("pane");
    const path: string[] = [];
    for (const key of ["F6", "F6", "F6", "F6", "F6", "F6", "Shift+F6", "F6", "F6", "Escape"]) {
      await page.keyboard.press(key);
      path.push(await where());
    }
    expect(path).toEqual(["cautions", "workbooks", "menus", "cells", "sheets", "pane", "sheets", "pane", "cautions", "cells"]);
    await page.locator("#functions").click();
    expect(await page.locator("#pane").isVisible()).toBe(false);
  });

  it("opens a menu by keys, goes through its entries, and leaves it", async () => {
    const { page } = sheet;
    await page.keyboard.press("Shift+F6");
    await page.keyboard.press("ArrowRight");
    expect(await page.evaluate(() => document.activeElement!.textContent)).toBe("Edit");
    await page.keyboard.press("Enter");
    await page.locator(".o-menu-item:focus").waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".o-menu").waitFor({ state: "detached" });
  });

  it("saves the workbook on Ctrl+S, with what is half typed", async () => {
    const { page } = sheet;
    await sheet.go("P12");
    await sheet.keys("half");
    const saved = page.waitForEvent("download");
    await page.keyboard.press("Control+s");
    expect((await saved).suggestedFilename()).toMatch(/\.xlsx$/);
    await sheet.shows("P12", "half");
  });

  it("shows one line of cautions that fits the sheet, and all of them at a press", async () => {
    const { page } = sheet;
    const height = async () => (await page.locator(".care").boundingBox())!.height;
    await page.locator("#care").getByText("Do not use a kitchen oven. Stay with it. Bake drained pieces only.").waitFor();
    expect(await height()).toBeLessThan(30);
    await page.locator("#cautions").click();
    expect(await page.locator("#here-cautions li").count()).toBeGreaterThan(2);
    expect(await page.locator("#all-cautions li").count()).toBeGreaterThan(4);
    await page.keyboard.press("Escape");
  });

  it("gives axe nothing to find: the page, the list of workbooks, a question", async () => {
    const { page } = sheet;
    expect(await objections(page)).toEqual([]);
    await page.locator("#workbooks").click();
    await page.locator("#books h2").waitFor();
    expect(await objections(page)).toEqual([]);
    await page.locator("#books").getByRole("button", { name: "Delete everything" }).click();
    expect(await objections(page)).toEqual([]);
    await sheet.answer("Cancel");
    await page.keyboard.press("Escape");
  });

  it("gives axe nothing to find in the help on a phone; the ten steps write the line to send", async () => {
    const context = await made.stranger({ viewport: { width: 390, height: 844 }, bypassCSP: true });
    const help = await context.newPage();
    for (const name of ["index", "bake", "plan", "is-it-dry", "first-excel"]) {
      await help.goto(`${made.served.address}help/${name}.html`);
      expect([name, await objections(help)]).toEqual([name, []]);
    }
    await help.locator("[data-step]").first().check();
    expect(await help.locator("#line").inputValue()).toMatch(/ 1: y 2: n /);
    await context.close();
  });

  it("prints the sheet as pages, without what stands around it", async () => {
    const { page } = sheet;
    await page.locator("#grid").click({ position: { x: 300, y: 300 } });
    await page.keyboard.press("Control+p");
    await page.locator(".o-print-page canvas").first().waitFor();
    await page.emulateMedia({ media: "print" });
    for (const place of [".head", ".care", ".o-print-header"]) expect(await page.locator(place).isVisible()).toBe(false);
    expect(await page.locator(".o-print-page").first().isVisible()).toBe(true);
    await page.emulateMedia({ media: null });
    await page.keyboard.press("Escape");
  });

  it("raises no error and asks no other server", () => {
    expect(made.troubles).toEqual([]);
    expect(made.strays()).toEqual([]);
    expect(made.requests.length).toBeGreaterThan(8);
  });
});
