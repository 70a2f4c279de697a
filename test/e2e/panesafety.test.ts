import { needing } from "../needing";
import { eachPane } from "./panealone";

needing("browser")("the safety list in the pane, by keyboard alone", () => {
  const own = eachPane();

  it("ticks an item and keeps the tick in the workbook", async () => {
    await own.to("#tick-rated");
    await own.press("Space");
    await own.kept('"done":true');
    expect(await own.part()).toMatch(/"id":"rated"[^}]*"done":true/);
    expect(await own.frame.locator(".tally").textContent()).toContain("1 of");
    expect(await own.focused()).toBe("tick-rated");
  });

  it("adds, edits, moves, removes and undoes, the focus staying near", async () => {
    await own.to("Add an item to Oven");
    await own.press("Enter");
    expect(await own.focused()).toBe("item-text");
    await own.type("=1+1 is on the door");
    await own.press("Tab");
    await own.type("It is <b>my</b> rule");
    await own.to("Keep");
    await own.press("Enter");
    await own.kept("=1+1 is on the door");
    expect(await own.focused()).toBe("change-own-1");
    await own.press("Enter");
    await own.to("Move up");
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("Now number 6 of 7.");
    expect(await own.focused()).toBe("move-up");
    await own.to("Remove");
    await own.press("Enter");
    expect(await own.focused()).toBe("change-stay");
    expect(await own.frame.locator("#change-own-1").count()).toBe(0);
    await own.to("Undo");
    await own.press("Enter");
    expect(await own.frame.locator("#change-own-1").count()).toBe(1);
    expect(await own.frame.locator(".item b").count()).toBe(0);
  });

  it("restores an item that was edited, and one that was removed", async () => {
    await own.to("#change-foam");
    await own.press("Enter");
    await own.press("Control+A");
    await own.type("Other words");
    await own.to("Keep");
    await own.press("Enter");
    await own.kept("Other words");
    await own.press("Enter");
    await own.to("Restore the original wording");
    await own.press("Enter");
    await own.kept("Leave room for foam above the resin");
    await own.press("Enter");
    await own.to("Remove");
    await own.press("Enter");
    await own.to("One item of the list removed");
    await own.press("Enter");
    await own.to("Put back: Leave room for foam");
    await own.press("Enter");
    expect(await own.frame.locator("#tick-foam").count()).toBe(1);
  });

  it("starts a new run and tells of the one before", async () => {
    await own.to("#tick-rated");
    await own.press("Space");
    await own.to("Start a new run");
    await own.press("Enter");
    expect(await own.focused()).toBe("safety-who");
    await own.type("Blue shop");
    await own.press("Enter");
    await own.kept('"who":"Blue shop"');
    expect(await own.frame.locator("summary").first().textContent()).toBe("Earlier runs: 1");
    expect(await own.frame.locator(".last h3").first().textContent()).toMatch(/^\d{4}-\d\d-\d\d: \d+ not checked$/);
    expect(await own.frame.getByText("This run:").textContent()).toMatch(/This run: \d{4}-\d\d-\d\d, Blue shop/);
    expect(await own.frame.locator(".tally").textContent()).toContain("0 of");
    expect(await own.focused()).toBe("safety-start");
  });

  it("keeps what is half typed when something else is opened, and says so", async () => {
    await own.to("#change-gauge");
    await own.press("Enter");
    await own.type(" (kept)");
    await own.to("#change-foam");
    await own.press("Enter");
    await own.kept("(kept)");
    expect(await own.said().textContent()).toMatch(/^“.*\(kept\)” is kept\.$/);
    expect(await own.focused()).toBe("item-text");
    await own.to("Add an item to Oven");
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("");
    await own.type("The door shuts");
    await own.to("Add an item to After");
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("“The door shuts” is kept.");
    await own.kept("The door shuts");
  });

  it("takes Enter for Keep, and says nothing more once a form is left", async () => {
    await own.to("Add an item to Oven");
    await own.press("Enter");
    expect(await own.frame.getByText("Do not add it").count()).toBe(1);
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("Type what to check.");
    expect(await own.focused()).toBe("item-text");
    await own.press("Escape");
    expect(await own.said().textContent()).toBe("");
    await own.press("Enter");
    await own.type("One line");
    await own.press("Enter");
    await own.kept('"text":"One line"');
    expect(await own.focused()).toBe("change-own-1");
  });

  it("moves an item in the stage that its form shows", async () => {
    await own.to("#change-gauge");
    await own.press("Enter");
    await own.frame.locator("#item-stage").selectOption({ label: "Oven" });
    await own.to("Move up");
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("Now number 6 of 7, under Oven.");
    expect(await own.focused()).toBe("move-up");
    expect(await own.frame.locator('[aria-labelledby="stage-oven"] #change-gauge').count()).toBe(1);
  });

  it("says what it did, and that it did nothing", async () => {
    await own.to("Restore all");
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("Nothing to restore: the list is the original one.");
    await own.to("#change-foam");
    await own.press("Enter");
    await own.to("Remove");
    await own.press("Enter");
    await own.to("One item of the list removed");
    await own.press("Enter");
    await own.to("Put back: Leave room for foam");
    await own.press("Enter");
    expect(await own.said().textContent()).toBe("It is back on the list.");
  });

  it("puts the list on a sheet", async () => {
    await own.to("Put it on a sheet");
    await own.press("Enter");
    await own.page.waitForFunction(() => sheet.printed.length > 40);
    expect(await own.said().textContent()).toBe("The list is on its own sheet.");
  });
});
