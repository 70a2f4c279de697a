import { readFileSync } from "node:fs";
import { placeOf } from "../../src/checklist/part";
import { needing } from "../needing";
import { settled } from "../taskpane/pane";
import { eachPane } from "./panealone";

needing("browser")("the safety list in the pane, when keeping goes wrong", () => {
  const own = eachPane();

  it("says so, keeps the list in sight and tries again", async () => {
    await own.page.evaluate(() => {
      sheet.refuses = "This workbook is read only: save a copy of it first.";
    });
    await own.to("#tick-rated");
    await own.press("Space");
    await own.frame.locator(".notice.failed").waitFor();
    expect(await own.frame.locator(".notice.failed").textContent()).toContain("read only");
    expect(await own.parts()).toEqual([]);
    await own.page.evaluate(() => {
      sheet.refuses = "";
    });
    await own.frame.locator(".notice.failed fluent-button").focus();
    await own.press("Enter");
    await own.kept('"done":true');
    await own.frame.locator(".notice.failed").waitFor({ state: "detached" });
  });

  it("loses nothing by a reload in the middle of a word", async () => {
    await own.to("#change-gauge");
    await own.press("Enter");
    await own.type(" (half a wor");
    await own.page.reload();
    await own.find();
    await own.frame.locator("#item-text").waitFor();
    expect(await own.frame.locator("#item-text").inputValue()).toContain("(half a wor");
  });

  it("loses no half typed name by a reload", async () => {
    await own.to("Start a new run");
    await own.press("Enter");
    expect(await own.frame.locator(".sheet").textContent()).toContain("Starting a new run clears the check marks.");
    await own.type("Blue sh");
    await own.page.reload();
    await own.find();
    await own.frame.locator("#safety-who").waitFor();
    expect(await own.frame.locator("#safety-who").inputValue()).toBe("Blue sh");
  });

  it("says it beside what has the focus, never over it", async () => {
    await own.page.setViewportSize({ width: 320, height: 420 });
    await own.page.evaluate(() => {
      sheet.refuses = "Not just now, as the workbook is being saved. ".repeat(12);
    });
    await own.to("Put it on a sheet");
    const at = (selector: string) => own.frame.evaluate((one) => document.querySelector(one)!.getBoundingClientRect().toJSON(), selector);
    await own.press("Enter");
    await own.frame.locator('.said[data-failed="true"]').waitFor();
    await settled(own.frame);
    const [bar, button] = [await at(".said"), await at(".foot fluent-button:nth-child(2)")];
    expect(bar.height).toBeLessThan(125);
    expect(button.bottom).toBeLessThanOrEqual(bar.top);
    expect(await own.frame.locator(".said").getAttribute("tabindex")).toBe("0");
  });

  it("loses nothing by a reload while the workbook refuses", async () => {
    await own.page.evaluate(() => {
      sheet.refuses = "no room";
    });
    await own.to("#tick-rated");
    await own.press("Space");
    await own.frame.locator(".notice.failed").waitFor();
    await own.page.reload();
    await own.find();
    await own.kept('"done":true');
    expect(await own.frame.locator(".tally").textContent()).toContain("1 of");
  });

  it.each([
    { what: "damaged", xml: "<checklist", says: "damaged" },
    { what: "newer", xml: `<checklist xmlns="${placeOf(1)}" version="9"/>`, says: "newer Porewise" },
  ])("leaves a $what part as it is, and starts a fresh list beside it", async ({ xml, says }) => {
    await own.page.evaluate(([place, text]) => sheet.parts.set(place, text), [placeOf(1), xml]);
    await own.page.reload();
    await own.find();
    await own.frame.locator("#tick-rated").waitFor();
    expect(await own.frame.locator(".notice").first().textContent()).toContain(says);
    await own.page.evaluate(() => document.querySelector("iframe")!.focus());
    const saved = own.page.waitForEvent("download");
    await own.to("Save the old list to a file");
    await own.press("Enter");
    expect(readFileSync(await (await saved).path(), "utf8")).toBe(xml);
    await own.to("#tick-rated");
    await own.press("Space");
    await own.kept('"done":true');
    expect(await own.page.evaluate((place) => sheet.parts.get(place), placeOf(1))).toBe(xml);
    expect(await own.part()).toContain(placeOf(2));
    // What the browser makes of broken XML is a page of its own with a style of its own, which the policy keeps out.
    for (let at = own.troubles.length - 1; at >= 0; at--)
      if (own.troubles[at].startsWith("Applying inline style")) own.troubles.splice(at, 1);
  });

  it("never lets a key reach the sheet once a button in it has vanished", async () => {
    await own.to("#change-rated");
    await own.press("Enter");
    await own.to("Remove");
    await own.press("Enter");
    await own.type("oops");
    expect(await own.page.evaluate(() => document.querySelector<HTMLInputElement>("#grid")!.value)).toBe("");
    expect(await own.page.evaluate(() => document.activeElement?.tagName)).toBe("IFRAME");
  });
});
