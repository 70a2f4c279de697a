import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Frame, Page } from "playwright-core";
import { placeOf } from "../../src/checklist/part";
import { launch } from "../../tool/browser";
import budget from "../bench/budget.json";
import { needing } from "../needing";
import { workbookOf } from "../sheet/file/workbooks";
import { type Bench, bench, open, paneOf, settled, tabTo } from "../taskpane/pane";

const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/** A workbook file of which only the names of its sheets are read. */
const workbook = workbookOf({ sheets: { "My Shop": "", "Blanks &amp; co": "", Today: "" } });

needing("browser")("the pane beside a sheet", () => {
  let browser: Browser;
  let made: Bench;
  let page: Page;
  let pane: Frame;
  let strays: string[];
  let troubles: string[];

  beforeAll(async () => {
    [browser, made] = await Promise.all([launch(), bench()]);
    writeFileSync(join(made.folder, "workbook/porewise-live-us.xlsx"), workbook);
  });
  afterAll(async () => {
    await browser?.close();
    await made?.close();
  });
  beforeEach(async () => {
    ({ page, pane, strays, troubles } = await open(browser, made));
    await pane.locator("#panel-safety .item").first().waitFor();
    await page.evaluate(() => document.querySelector("iframe")!.focus());
  });
  afterEach(async () => {
    await page.context().close();
    expect(strays).toEqual([]);
    expect(troubles).toEqual([]);
  });

  const press = (...keys: string[]) => keys.reduce((last, key) => last.then(() => page.keyboard.press(key)), Promise.resolve());
  const type = (words: string) => page.keyboard.type(words);
  const to = (wanted: string) => tabTo(page, pane, wanted);
  const said = () => pane.locator(".said").textContent();
  const focused = () => pane.evaluate(() => document.activeElement?.id ?? "");
  const parts = () => page.evaluate(() => [...sheet.parts.values()]);
  const part = async () => (await parts()).at(-1) ?? "";
  const view = async (name: string) => {
    await tabTo(page, pane, "Safety");
    const order = ["Safety", "Workbook", "Functions", "Working"];
    await press(...Array(order.indexOf(name)).fill("ArrowRight"));
    await pane.locator(`#panel-${name.toLowerCase()} > *`).waitFor();
  };
  const kept = async (words: string) => {
    await page.waitForFunction((text) => [...sheet.parts.values()].some((xml) => xml.includes(text)), words);
  };

  it("stays within its size", () => {
    expect(made.size / 1000).toBeLessThan(budget["gzip kB"]["taskpane.js"]);
  });

  describe("safety, by keyboard alone", () => {
    it("ticks an item and keeps the tick in the workbook", async () => {
      await to("#tick-rated");
      await press("Space");
      await kept('"done":true');
      expect(await part()).toMatch(/"id":"rated"[^}]*"done":true/);
      expect(await pane.locator(".tally").textContent()).toContain("1 of");
      expect(await focused()).toBe("tick-rated");
    });

    it("adds, edits, moves, removes and undoes, the focus staying near", async () => {
      await to("Add an item to Oven");
      await press("Enter");
      expect(await focused()).toBe("item-text");
      await type("=1+1 is on the door");
      await press("Tab");
      await type("It is <b>my</b> rule");
      await to("Keep");
      await press("Enter");
      await kept("=1+1 is on the door");
      expect(await focused()).toBe("change-own-1");
      await press("Enter");
      await to("Move up");
      await press("Enter");
      expect(await said()).toBe("Now number 6 of 7.");
      expect(await focused()).toBe("move-up");
      await to("Remove");
      await press("Enter");
      expect(await focused()).toBe("change-stay");
      expect(await pane.locator("#change-own-1").count()).toBe(0);
      await to("Undo");
      await press("Enter");
      expect(await pane.locator("#change-own-1").count()).toBe(1);
      expect(await pane.locator(".item b").count()).toBe(0);
    });

    it("restores an item that was edited, and one that was removed", async () => {
      await to("#change-foam");
      await press("Enter");
      await press("Control+A");
      await type("Other words");
      await to("Keep");
      await press("Enter");
      await kept("Other words");
      await press("Enter");
      await to("Restore the original wording");
      await press("Enter");
      await kept("Leave room for foam above the resin");
      await press("Enter");
      await to("Remove");
      await press("Enter");
      await to("One item of the list removed");
      await press("Enter");
      await to("Put back: Leave room for foam");
      await press("Enter");
      expect(await pane.locator("#tick-foam").count()).toBe(1);
    });

    it("starts a new run and tells of the one before", async () => {
      await to("#tick-rated");
      await press("Space");
      await to("Start a new run");
      await press("Enter");
      expect(await focused()).toBe("safety-who");
      await type("Blue shop");
      await press("Enter");
      await kept('"who":"Blue shop"');
      expect(await pane.locator("summary").first().textContent()).toBe("Earlier runs: 1");
      expect(await pane.locator(".last h3").first().textContent()).toMatch(/^\d{4}-\d\d-\d\d: \d+ not checked$/);
      expect(await pane.getByText("This run:").textContent()).toMatch(/This run: \d{4}-\d\d-\d\d, Blue shop/);
      expect(await pane.locator(".tally").textContent()).toContain("0 of");
      expect(await focused()).toBe("safety-start");
    });

    it("keeps what is half typed when something else is opened, and says so", async () => {
      await to("#change-gauge");
      await press("Enter");
      await type(" (kept)");
      await to("#change-foam");
      await press("Enter");
      await kept("(kept)");
      expect(await said()).toMatch(/^“.*\(kept\)” is kept\.$/);
      expect(await focused()).toBe("item-text");
      await to("Add an item to Oven");
      await press("Enter");
      expect(await said()).toBe("");
      await type("The door shuts");
      await to("Add an item to After");
      await press("Enter");
      expect(await said()).toBe("“The door shuts” is kept.");
      await kept("The door shuts");
    });

    it("takes Enter for Keep, and says nothing more once a form is left", async () => {
      await to("Add an item to Oven");
      await press("Enter");
      expect(await pane.getByText("Do not add it").count()).toBe(1);
      await press("Enter");
      expect(await said()).toBe("Type what to check.");
      expect(await focused()).toBe("item-text");
      await press("Escape");
      expect(await said()).toBe("");
      await press("Enter");
      await type("One line");
      await press("Enter");
      await kept('"text":"One line"');
      expect(await focused()).toBe("change-own-1");
    });

    it("moves an item in the stage that its form shows", async () => {
      await to("#change-gauge");
      await press("Enter");
      await pane.locator("#item-stage").selectOption({ label: "Oven" });
      await to("Move up");
      await press("Enter");
      expect(await said()).toBe("Now number 6 of 7, under Oven.");
      expect(await focused()).toBe("move-up");
      expect(await pane.locator('[aria-labelledby="stage-oven"] #change-gauge').count()).toBe(1);
    });

    it("says what it did, and that it did nothing", async () => {
      await to("Restore all");
      await press("Enter");
      expect(await said()).toBe("Nothing to restore: the list is the original one.");
      await to("#change-foam");
      await press("Enter");
      await to("Remove");
      await press("Enter");
      await to("One item of the list removed");
      await press("Enter");
      await to("Put back: Leave room for foam");
      await press("Enter");
      expect(await said()).toBe("It is back on the list.");
    });

    it("puts the list on a sheet", async () => {
      await to("Put it on a sheet");
      await press("Enter");
      await page.waitForFunction(() => sheet.printed.length > 40);
      expect(await said()).toBe("The list is on its own sheet.");
    });
  });

  describe("safety, when keeping goes wrong", () => {
    it("says so, keeps the list in sight and tries again", async () => {
      await page.evaluate(() => {
        sheet.refuses = "This workbook is read only: save a copy of it first.";
      });
      await to("#tick-rated");
      await press("Space");
      await pane.locator(".notice.failed").waitFor();
      expect(await pane.locator(".notice.failed").textContent()).toContain("read only");
      expect(await parts()).toEqual([]);
      await page.evaluate(() => {
        sheet.refuses = "";
      });
      await pane.locator(".notice.failed fluent-button").focus();
      await press("Enter");
      await kept('"done":true');
      await pane.locator(".notice.failed").waitFor({ state: "detached" });
    });

    it("loses nothing by a reload in the middle of a word", async () => {
      await to("#change-gauge");
      await press("Enter");
      await type(" (half a wor");
      await page.reload();
      pane = await paneOf(page);
      await pane.locator("#item-text").waitFor();
      expect(await pane.locator("#item-text").inputValue()).toContain("(half a wor");
    });

    it("loses no half typed name by a reload", async () => {
      await to("Start a new run");
      await press("Enter");
      expect(await pane.locator(".sheet").textContent()).toContain("Starting a new run clears the check marks.");
      await type("Blue sh");
      await page.reload();
      pane = await paneOf(page);
      await pane.locator("#safety-who").waitFor();
      expect(await pane.locator("#safety-who").inputValue()).toBe("Blue sh");
    });

    it("says it beside what has the focus, never over it", async () => {
      await page.setViewportSize({ width: 320, height: 420 });
      await page.evaluate(() => {
        sheet.refuses = "Not just now, as the workbook is being saved. ".repeat(12);
      });
      await to("Put it on a sheet");
      const at = (selector: string) => pane.evaluate((one) => document.querySelector(one)!.getBoundingClientRect().toJSON(), selector);
      await press("Enter");
      await pane.locator('.said[data-failed="true"]').waitFor();
      await settled(pane);
      const [bar, button] = [await at(".said"), await at(".foot fluent-button:nth-child(2)")];
      expect(bar.height).toBeLessThan(125);
      expect(button.bottom).toBeLessThanOrEqual(bar.top);
      expect(await pane.locator(".said").getAttribute("tabindex")).toBe("0");
    });

    it("loses nothing by a reload while the workbook refuses", async () => {
      await page.evaluate(() => {
        sheet.refuses = "no room";
      });
      await to("#tick-rated");
      await press("Space");
      await pane.locator(".notice.failed").waitFor();
      await page.reload();
      pane = await paneOf(page);
      await kept('"done":true');
      expect(await pane.locator(".tally").textContent()).toContain("1 of");
    });

    it.each([
      { what: "damaged", xml: "<checklist", says: "damaged" },
      { what: "newer", xml: `<checklist xmlns="${placeOf(1)}" version="9"/>`, says: "newer Porewise" },
    ])("leaves a $what part as it is, and starts a fresh list beside it", async ({ xml, says }) => {
      await page.evaluate(([place, text]) => sheet.parts.set(place, text), [placeOf(1), xml]);
      await page.reload();
      pane = await paneOf(page);
      await pane.locator("#tick-rated").waitFor();
      expect(await pane.locator(".notice").first().textContent()).toContain(says);
      await page.evaluate(() => document.querySelector("iframe")!.focus());
      const saved = page.waitForEvent("download");
      await to("Save the old list to a file");
      await press("Enter");
      expect(readFileSync(await (await saved).path(), "utf8")).toBe(xml);
      await to("#tick-rated");
      await press("Space");
      await kept('"done":true');
      expect(await page.evaluate((place) => sheet.parts.get(place), placeOf(1))).toBe(xml);
      expect(await part()).toContain(placeOf(2));
      // What the browser makes of broken XML is a page of its own with a style of its own, which the policy keeps out.
      for (let at = troubles.length - 1; at >= 0; at--) if (troubles[at].startsWith("Applying inline style")) troubles.splice(at, 1);
    });
  });

  describe("workbook, by keyboard alone", () => {
    it("inserts the sheets that are ticked", async () => {
      await view("Workbook");
      await to("#sheet-1");
      await press("Space");
      await to("Insert into this workbook");
      await press("Enter");
      await page.waitForFunction(() => sheet.inserted.length > 0);
      expect(await page.evaluate(() => sheet.inserted)).toEqual(["My Shop", "Today"]);
      expect(await said()).toBe("2 sheets stand at the end.");
    });

    it("shows how far it is after half a second, and stops", async () => {
      await page.evaluate(() => {
        sheet.lasts = 5000;
      });
      await view("Workbook");
      await to("In the whole workbook");
      await press("Enter");
      expect(await pane.locator("#stop").count()).toBe(0);
      await pane.locator("#stop").waitFor({ timeout: 2000 });
      await to("Stop");
      await press("Enter");
      await page.waitForFunction(() => sheet.stopped === 1);
      await pane.locator("#stop").waitFor({ state: "detached" });
      expect(await said()).toBe("Stopped: nothing was changed.");
    });

    it("says in plain words that a file is not there", async () => {
      await view("Workbook");
      await pane.locator("#insert").waitFor();
      await pane.locator('input[name="units"]').nth(0).focus();
      await press("ArrowDown");
      await pane.locator("#panel-workbook .notice").waitFor();
      expect(await pane.locator("#panel-workbook .notice").textContent()).toContain("porewise-live-si.xlsx is missing");
    });

    it("downloads the file", async () => {
      await view("Workbook");
      await to("Download");
      const saved = page.waitForEvent("download");
      await press("Enter");
      expect((await saved).suggestedFilename()).toBe("porewise-live-us.xlsx");
    });

    it("opens with the workbook when asked to, and says when it may not", async () => {
      await view("Workbook");
      await to("#opens");
      await press("Space");
      await page.waitForFunction(() => sheet.opening);
      await page.evaluate(() => {
        sheet.refuses = "The workbook is read only.";
      });
      await press("Space");
      await pane.locator(".said", { hasText: "The workbook is read only." }).waitFor();
      expect(await pane.locator("#opens").evaluate((box) => (box as HTMLInputElement).checked)).toBe(true);
    });
  });

  describe("functions, by keyboard alone", () => {
    const openFill = async () => {
      await view("Functions");
      await to("How much resin covers the pieces?");
      await press("Enter");
      await pane.locator("#field-chamber").waitFor();
    };

    it("answers as one types, in kitchen measures too, and puts formula and format into the cell", async () => {
      await openFill();
      for (const [field, text] of Object.entries({ chamber: "6", stack: "5", solids: "104" })) {
        await to(`#field-${field}`);
        await type(text);
      }
      expect(await pane.locator("#answer").textContent()).toMatch(/Resin to pour\s*1\.14 qt\s*4\.5 cups, 1080 mL/);
      await to("Insert formula");
      await press("Enter");
      await page.waitForFunction(() => sheet.cells.size > 0);
      expect(await page.evaluate(() => sheet.cells.get("Sheet1!B2"))).toMatchObject({ formula: "=PORE.FILL(6,5,104)", format: "0.00" });
    });

    it("never writes over a filled cell without asking", async () => {
      await page.evaluate(() => sheet.cells.set("Sheet1!B2", { formula: "", value: 12 }));
      await openFill();
      await pane.locator("#field-chamber").fill("6");
      await pane.locator("#field-stack").fill("5");
      await pane.locator("#field-solids").fill("104");
      await to("#put");
      await press("Enter");
      await pane.locator("#put-over").waitFor();
      expect(await focused()).toBe("put-over");
      expect(await page.evaluate(() => sheet.cells.get("Sheet1!B2")!.value)).toBe(12);
      await press("Enter");
      await page.waitForFunction(() => sheet.cells.get("Sheet1!B2")!.formula !== "");
      expect(await focused()).toBe("put");
      expect(await said()).toBe("Formula inserted in Sheet1!B2.");
      await press("Enter");
      await pane.locator("#put-over").waitFor();
      expect(await said()).toBe("");
    });

    it("judges a typed nought, and puts no formula into a cell that would show nothing", async () => {
      await view("Functions");
      await pane.locator("#ask-MOISTURE").click();
      for (const field of ["weight", "dryWeight"]) await pane.locator(`#field-${field}`).fill("0");
      expect(await pane.locator(".field .fault").allTextContents()).toEqual(Array(2).fill(expect.stringContaining("0 oz is outside")));
      await page.evaluate(() => {
        sheet.cells.set("Shop!C3", { formula: "", value: 0 });
        sheet.select("Shop!C3");
      });
      for (const field of ["weight", "dryWeight"]) {
        await pane.locator(`#use-${field}`).click();
        await pane.locator(`[aria-describedby^="label-${field}"]`).waitFor();
      }
      expect(await pane.locator("#answer").textContent()).toContain("so the answer is blank too");
      await pane.locator("#put").click();
      expect(await pane.locator("#put").getAttribute("disabled-focusable")).not.toBeNull();
      expect(await pane.locator("#put-over").count()).toBe(0);
    });

    it("shows what is wrong under the field, tied to it", async () => {
      await openFill();
      await to("#field-stack");
      await type("5 lb");
      const field = pane.locator("#field-stack");
      expect(await field.getAttribute("aria-invalid")).toBe("true");
      const words = await pane.locator("#trouble-stack").textContent();
      expect(words).toContain("is a weight, not a length");
      expect(await field.getAttribute("aria-describedby")).toContain("trouble-stack");
    });

    it("takes what is selected, and puts it in by its reference", async () => {
      await page.evaluate(() => {
        sheet.cells.set("Shop!C3", { formula: "", value: 6 });
        sheet.select("Shop!C3");
      });
      await openFill();
      await to("#use-chamber");
      await press("Enter");
      await pane.locator(".from").waitFor();
      expect(await pane.locator(".from").textContent()).toBe("from Shop!C3, one cell");
      expect(await pane.locator(".formula").textContent()).toBe("=PORE.FILL(Shop!C3)");
    });

    it("finds a function by a word, and shows all behind more", async () => {
      await view("Functions");
      await to("#search");
      await type("foam");
      expect((await pane.locator(".ask").allTextContents())[0]).toContain("Is there room for the foam?");
      await press("Control+A", "Delete");
      expect(await pane.locator(".ask").count()).toBe(8);
      await to("#more");
      await press("Enter");
      expect(await pane.locator(".ask").count()).toBeGreaterThan(40);
    });

    it("keeps what was typed over a reload", async () => {
      await openFill();
      await to("#field-chamber");
      await type("7 1/2");
      await page.reload();
      pane = await paneOf(page);
      await pane.locator("#field-chamber").waitFor();
      expect(await pane.locator("#field-chamber").inputValue()).toBe("7 1/2");
    });

    it("tells of a lid that it is refused or not, and never the share", async () => {
      await view("Functions");
      await to("#search");
      await type("lid");
      await to("Is this lid too weak?");
      await press("Enter");
      await pane.locator("#field-diameter").fill("6");
      await pane.locator("#field-thickness").fill("0.75");
      expect(await pane.locator("#answer").textContent()).toMatch(/^\s*Verdict\s*not ruled out \(this is no approval\)\s*$/);
      expect(await pane.locator(".formula").textContent()).toBe("=PORE.LIDLOAD(6,0.75)");
      await pane.locator("#field-diameter").fill("30");
      expect(await pane.locator("#answer").textContent()).toMatch(/^\s*Verdict\s*too weak: do not pump\s*$/);
    });
  });

  describe("working", () => {
    const calculate = (name: string, ...given: (number | string)[]) =>
      page.evaluate(
        ([name, given]) => {
          sheet.calculate("Sheet1!B2", `=PORE.${name}(${given})`, name as string, ...(given as number[]).map((cell) => [[cell]]));
          sheet.select("Sheet1!B2");
        },
        [name, given] as const,
      );

    it("follows the selected cell: equation, numbers, source, cautions and drawings", async () => {
      await calculate("BAKE", 0.75, 0.75, 5, 0.4);
      await view("Working");
      await pane.locator("#working .call").waitFor();
      expect(await pane.locator(".equation.numbers").textContent()).toContain("until the core reaches 190 °F in an oven at 200 °F");
      expect(await pane.locator("#working").textContent()).toContain("likely 33 to ");
      expect(await pane.locator("figure h3").allTextContents()).toEqual([
        "How surface and core warm up",
        "The blank sawn across after 15 min",
      ]);
      await calculate("ARRANGE", 6, 10, 0.75, 0.75, 5, 16);
      await pane.getByText("How do the pieces go into the chamber?").waitFor();
      expect(await pane.locator("figure h3").allTextContents()).toEqual(["Inside the chamber, from the side", "The top layer, from above"]);
    });

    it("says what to select, and offers to calculate what it cannot vouch for", async () => {
      await view("Working");
      await pane.getByText("There is no PORE function in this cell.").waitFor();
      await page.evaluate(() => {
        sheet.cells.set("Sheet1!C3", { formula: "=PORE.DYE(2)", value: 0.5 });
        sheet.select("Sheet1!C3");
      });
      await pane.locator("#calculate").waitFor();
      await to("#calculate");
      await press("Enter");
      expect(await pane.locator("#working").textContent()).toContain("has not seen this cell calculate");
      await pane.locator('.said[data-failed="true"]').waitFor();
      expect(await said()).toBe("The cell was calculated, but no PORE function ran: check the spelling of its name.");
    });

    it("never shows a stale number as fresh", async () => {
      await calculate("DYE", 2);
      await view("Working");
      await pane.locator("#working .call").waitFor();
      await page.evaluate(() => {
        sheet.cells.set("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.75 });
        sheet.select("Sheet1!B2");
      });
      await pane.locator("#calculate").waitFor();
      expect(await pane.locator("#working .call").count()).toBe(0);
    });

    it("never tells a lid's share", async () => {
      await calculate("LIDLOAD", 6, 0.75);
      await view("Working");
      await pane.locator("#working .call").waitFor();
      const text = await pane.locator("#working .lines").first().textContent();
      expect(text).toBe("Verdictnot ruled out (this is no approval)");
      expect(await pane.locator("#working").textContent()).not.toMatch(/20\.[23]|20 %|0\.20/);
    });

    it("draws my week for a plan and how each load is packed, with the moments to start by", async () => {
      await page.evaluate(() => {
        const pieces = [["maple", 60, 0.75, 0.75, 5, 0.45]];
        sheet.calculate("Sheet1!B2", "=PORE.PLAN(A1:F1,6,10,D1)", "PLAN", pieces, [[6]], [[10]], [["2026-03-16"]]);
        sheet.select("Sheet1!B2");
      });
      await view("Working");
      await pane.locator("figure").first().waitFor();
      expect(await pane.locator("figure h3").allTextContents()).toEqual(["Week", "Load 1 from above", "Load 1 from the side"]);
      expect(await pane.locator(".loads strong").first().textContent()).toBe("Mon, Mar 16, 8 AM");
      const pieces = Number((await pane.locator(".loads").first().textContent())!.match(/Load 1: (\d+) pieces/)![1]);
      expect(await pane.locator("figure").nth(1).locator(".picture .kind").count()).toBe(pieces);
      const loads = await pane.locator("#load option").count();
      expect(loads).toBeGreaterThan(1);
      await pane.locator("#load").selectOption(String(loads - 1));
      await pane.getByText(`Load ${loads} from above`).waitFor();
      // On paper stand all loads and no controls.
      const printed = await pane.evaluate(
        () =>
          new Promise<string[]>((done) => {
            globalThis.print = () => done([...document.querySelectorAll("figure h3")].map(({ textContent }) => textContent!));
            document.querySelector<HTMLElement>("#print-plan")!.click();
          }),
      );
      expect(printed).toHaveLength(1 + 2 * loads);
      await page.emulateMedia({ media: "print" });
      expect(await pane.locator("#print-plan").isVisible()).toBe(false);
      expect(await pane.locator("figure .picture").first().isVisible()).toBe(true);
      await page.emulateMedia({ media: "screen" });
    });
  });

  it("never lets a key reach the sheet once a button in it has vanished", async () => {
    await to("#change-rated");
    await press("Enter");
    await to("Remove");
    await press("Enter");
    await type("oops");
    expect(await page.evaluate(() => document.querySelector<HTMLInputElement>("#grid")!.value)).toBe("");
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("IFRAME");
  });

  it("has names for its controls in the browser's own tree", async () => {
    const session = await page.context().newCDPSession(page);
    const { frameTree } = await session.send("Page.getFrameTree");
    const { nodes } = await session.send("Accessibility.getFullAXTree", { frameId: frameTree.childFrames![0].frame.id });
    const named = (role: string) =>
      nodes.filter((node) => node.role?.value === role && !node.ignored).map((node) => node.name?.value ?? "");
    expect(named("tab")).toEqual(["Run", "Safety", "Workbook", "Functions", "Working"]);
    expect(named("checkbox").length).toBeGreaterThan(30);
    for (const role of ["checkbox", "button", "tab"]) expect(named(role)).not.toContain("");
  });

  describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
    it.each(["Safety", "Workbook", "Functions", "Working", "a form", "an item", "forced colours"])(
      "axe finds nothing in %s",
      async (what) => {
        await page.emulateMedia({ colorScheme, forcedColors: what === "forced colours" ? "active" : "none" });
        if (["Workbook", "Functions", "Working"].includes(what)) await view(what);
        if (what === "an item") await pane.locator("#change-rated").click();
        if (what === "Working")
          await page.evaluate(() => {
            sheet.calculate(
              "Sheet1!B2",
              "=PORE.ARRANGE(6,10,0.75,0.75,5,16)",
              "ARRANGE",
              ...[6, 10, 0.75, 0.75, 5, 16].map((cell) => [[cell]]),
            );
            sheet.select("Sheet1!B2");
          });
        if (what === "a form") {
          await view("Functions");
          await pane.locator("#ask-FILL").click();
          await pane.locator("#field-chamber").fill("6 lb");
        }
        await settled(pane);
        // The policy of the pane lets no script of a test in: the engine's evaluate is not bound by it.
        await pane.evaluate(axe);
        const { violations } = await pane.evaluate(() => (globalThis as any).axe.run(document, { resultTypes: ["violations"] }));
        expect(violations.map(({ id, nodes }: any) => [id, nodes.map((node: any) => `${node.html} ${node.failureSummary}`)])).toEqual([]);
      },
    );
  });

  it.each([1, 2])("needs no sideways scrolling with text at %s times its size", async (times) => {
    await pane.evaluate((size) => {
      document.documentElement.style.fontSize = `${size * 100}%`;
    }, times);
    for (const name of ["Run", "Safety", "Workbook", "Functions", "Working"]) {
      await pane.locator(`#tab-${name.toLowerCase()}`).click();
      await pane.locator(`#panel-${name.toLowerCase()} > *`).first().waitFor();
      await settled(pane);
      expect(await pane.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    }
  });
});
