import { objections } from "../axe";
import budget from "../bench/budget.json";
import { needing } from "../needing";
import { settled } from "../taskpane/pane";
import { eachPane } from "./panealone";

needing("browser")("how the pane is shown", () => {
  const own = eachPane();

  it("stays within its size", () => {
    expect(own.size / 1000).toBeLessThan(budget["gzip kB"]["taskpane.js"]);
  });

  it("has names for its controls in the browser's own tree", async () => {
    const session = await own.page.context().newCDPSession(own.page);
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
        await own.page.emulateMedia({ colorScheme, forcedColors: what === "forced colours" ? "active" : "none" });
        if (["Workbook", "Functions", "Working"].includes(what)) await own.view(what);
        if (what === "an item") await own.frame.locator("#change-rated").click();
        if (what === "Working")
          await own.page.evaluate(() => {
            sheet.calculate(
              "Sheet1!B2",
              "=PORE.ARRANGE(6,10,0.75,0.75,5,16)",
              "ARRANGE",
              ...[6, 10, 0.75, 0.75, 5, 16].map((cell) => [[cell]]),
            );
            sheet.select("Sheet1!B2");
          });
        if (what === "a form") {
          await own.view("Functions");
          await own.frame.locator("#ask-FILL").click();
          await own.frame.locator("#field-chamber").fill("6 lb");
        }
        await settled(own.frame);
        expect(await objections(own.frame)).toEqual([]);
      },
    );
  });

  it.each([1, 2])("needs no sideways scrolling with text at %s times its size", async (times) => {
    await own.frame.evaluate((size) => {
      document.documentElement.style.fontSize = `${size * 100}%`;
    }, times);
    for (const name of ["Run", "Safety", "Workbook", "Functions", "Working"]) {
      await own.frame.locator(`#tab-${name.toLowerCase()}`).click();
      await own.frame.locator(`#panel-${name.toLowerCase()} > *`).first().waitFor();
      await settled(own.frame);
      expect(await own.frame.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    }
  });
});
