import { needing } from "../needing";
import { eachPane } from "./panealone";

needing("browser")("the pane", () => {
  const own = eachPane();

  describe("workbook, by keyboard alone", () => {
    it("inserts the sheets that are ticked", async () => {
      await own.view("Workbook");
      await own.to("#sheet-1");
      await own.press("Space");
      await own.to("Insert into this workbook");
      await own.press("Enter");
      await own.page.waitForFunction(() => sheet.inserted.length > 0);
      expect(await own.page.evaluate(() => sheet.inserted)).toEqual(["My Shop", "Today"]);
      expect(await own.said().textContent()).toBe("2 sheets stand at the end.");
    });

    it("shows how far it is after half a second, and stops", async () => {
      await own.page.evaluate(() => {
        sheet.lasts = 5000;
      });
      await own.view("Workbook");
      await own.to("In the whole workbook");
      await own.press("Enter");
      expect(await own.frame.locator("#stop").count()).toBe(0);
      await own.frame.locator("#stop").waitFor({ timeout: 2000 });
      await own.to("Stop");
      await own.press("Enter");
      await own.page.waitForFunction(() => sheet.stopped === 1);
      await own.frame.locator("#stop").waitFor({ state: "detached" });
      expect(await own.said().textContent()).toBe("Stopped: nothing was changed.");
    });

    it("says in plain words that a file is not there", async () => {
      await own.view("Workbook");
      await own.frame.locator("#insert").waitFor();
      await own.frame.locator('input[name="units"]').nth(0).focus();
      await own.press("ArrowDown");
      await own.frame.locator("#panel-workbook .notice").waitFor();
      expect(await own.frame.locator("#panel-workbook .notice").textContent()).toContain("porewise-live-si.xlsx is missing");
    });

    it("downloads the file", async () => {
      await own.view("Workbook");
      await own.to("Download");
      const saved = own.page.waitForEvent("download");
      await own.press("Enter");
      expect((await saved).suggestedFilename()).toBe("porewise-live-us.xlsx");
    });

    it("opens with the workbook when asked to, and says when it may not", async () => {
      await own.view("Workbook");
      await own.to("#opens");
      await own.press("Space");
      await own.page.waitForFunction(() => sheet.opening);
      await own.page.evaluate(() => {
        sheet.refuses = "The workbook is read only.";
      });
      await own.press("Space");
      await own.frame.locator(".said", { hasText: "The workbook is read only." }).waitFor();
      expect(await own.frame.locator("#opens").evaluate((box) => (box as HTMLInputElement).checked)).toBe(true);
    });
  });

  describe("working", () => {
    const calculate = (name: string, ...given: (number | string)[]) =>
      own.page.evaluate(
        ([name, given]) => {
          sheet.calculate("Sheet1!B2", `=PORE.${name}(${given})`, name as string, ...(given as number[]).map((cell) => [[cell]]));
          sheet.select("Sheet1!B2");
        },
        [name, given] as const,
      );

    it("follows the selected cell: equation, numbers, source, cautions and drawings", async () => {
      await calculate("BAKE", 0.75, 0.75, 5, 0.4);
      await own.view("Working");
      await own.frame.locator("#working .call").waitFor();
      expect(await own.frame.locator(".equation.numbers").textContent()).toContain("until the core reaches 190 °F in an oven at 200 °F");
      expect(await own.frame.locator("#working").textContent()).toContain("likely 33 to ");
      expect(await own.frame.locator("figure h3").allTextContents()).toEqual([
        "How surface and core warm up",
        "The blank sawn across after 15 min",
      ]);
      await calculate("ARRANGE", 6, 10, 0.75, 0.75, 5, 16);
      await own.frame.getByText("How do the pieces go into the chamber?").waitFor();
      expect(await own.frame.locator("figure h3").allTextContents()).toEqual([
        "Inside the chamber, from the side",
        "The top layer, from above",
      ]);
    });

    it("says what to select, and offers to calculate what it cannot vouch for", async () => {
      await own.view("Working");
      await own.frame.getByText("There is no PORE function in this cell.").waitFor();
      await own.page.evaluate(() => {
        sheet.cells.set("Sheet1!C3", { formula: "=PORE.DYE(2)", value: 0.5 });
        sheet.select("Sheet1!C3");
      });
      await own.frame.locator("#calculate").waitFor();
      await own.to("#calculate");
      await own.press("Enter");
      expect(await own.frame.locator("#working").textContent()).toContain("has not seen this cell calculate");
      await own.frame.locator('.said[data-failed="true"]').waitFor();
      expect(await own.said().textContent()).toBe("The cell was calculated, but no PORE function ran: check the spelling of its name.");
    });

    it("never shows a stale number as fresh", async () => {
      await calculate("DYE", 2);
      await own.view("Working");
      await own.frame.locator("#working .call").waitFor();
      await own.page.evaluate(() => {
        sheet.cells.set("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.75 });
        sheet.select("Sheet1!B2");
      });
      await own.frame.locator("#calculate").waitFor();
      expect(await own.frame.locator("#working .call").count()).toBe(0);
    });

    it("never tells a lid's share", async () => {
      await calculate("LIDLOAD", 6, 0.75);
      await own.view("Working");
      await own.frame.locator("#working .call").waitFor();
      const text = await own.frame.locator("#working .lines").first().textContent();
      expect(text).toBe("Verdictnot ruled out (this is no approval)");
      expect(await own.frame.locator("#working").textContent()).not.toMatch(/20\.[23]|20 %|0\.20/);
    });

    it("draws my week for a plan and how each load is packed, with the moments to start by", async () => {
      await own.page.evaluate(() => {
        const pieces = [["maple", 60, 0.75, 0.75, 5, 0.45]];
        sheet.calculate("Sheet1!B2", "=PORE.PLAN(A1:F1,6,10,D1)", "PLAN", pieces, [[6]], [[10]], [["2026-03-16"]]);
        sheet.select("Sheet1!B2");
      });
      await own.view("Working");
      await own.frame.locator("figure").first().waitFor();
      expect(await own.frame.locator("figure h3").allTextContents()).toEqual(["Week", "Load 1 from above", "Load 1 from the side"]);
      expect(await own.frame.locator(".loads strong").first().textContent()).toBe("Mon, Mar 16, 8 AM");
      const pieces = Number((await own.frame.locator(".loads").first().textContent())!.match(/Load 1: (\d+) pieces/)![1]);
      expect(await own.frame.locator("figure").nth(1).locator(".picture .kind").count()).toBe(pieces);
      const loads = await own.frame.locator("#load option").count();
      expect(loads).toBeGreaterThan(1);
      await own.frame.locator("#load").selectOption(String(loads - 1));
      await own.frame.getByText(`Load ${loads} from above`).waitFor();
      // On paper stand all loads and no controls.
      const printed = await own.frame.evaluate(
        () =>
          new Promise<string[]>((done) => {
            globalThis.print = () => done([...document.querySelectorAll("figure h3")].map(({ textContent }) => textContent!));
            document.querySelector<HTMLElement>("#print-plan")!.click();
          }),
      );
      expect(printed).toHaveLength(1 + 2 * loads);
      await own.page.emulateMedia({ media: "print" });
      expect(await own.frame.locator("#print-plan").isVisible()).toBe(false);
      expect(await own.frame.locator("figure .picture").first().isVisible()).toBe(true);
      await own.page.emulateMedia({ media: "screen" });
    });
  });
});
