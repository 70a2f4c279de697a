import { strFromU8 } from "fflate";
import { placeOf } from "../../src/checklist/part";
import { needing } from "../needing";
import { f, row, workbookOf } from "../sheet/file/workbooks";
import { eachBeside } from "./panebeside";

const checklistPart = (xml: string): Record<string, string> => ({ "customXml/item1.xml": xml });
const toChecklist =
  '<Relationship Id="x1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>';

needing("browser")("the safety list beside the embedded sheet, by keyboard alone", () => {
  const beside = eachBeside();

  it("keeps the safety list in the workbook and in its file; the sheet Safety and the pane show one list", async () => {
    await beside.open();
    await beside.to("#tick-rated");
    await beside.press("Space");
    await beside.to("Add an item to Oven");
    await beside.press("Enter");
    await beside.page.keyboard.type("=1+1 is on the door");
    await beside.to("Keep");
    await beside.press("Enter");
    await beside.frame.locator("#change-own-1").waitFor();
    expect(await beside.focused()).toBe("change-own-1");
    await beside.sheet.turn("Safety");
    const row = await beside.page.locator("#mirror td").getByText("=1+1 is on the door", { exact: true }).getAttribute("data-cell");
    expect(await beside.sheet.words(row!.replace("C", "B"))).toBe("Oven");
    await beside.page.locator("#mirror td[data-column='0']").getByText("x", { exact: true }).first().waitFor({ state: "attached" });
    // What is ticked on the sheet is ticked in the pane.
    await beside.sheet.type(row!.replace("C", "A"), "x");
    await beside.frame.locator(".tally").getByText("2", { exact: true }).waitFor();
    await beside.sheet.go(row!.replace("C", "A"));
    await beside.page.keyboard.press("Delete");
    await beside.frame.locator(".tally").getByText("1", { exact: true }).waitFor();
    await beside.sheet.kept();
    await beside.sheet.reload();
    await beside.find();
    expect(await beside.frame.locator(".tally").first().textContent()).toMatch(/^\s*1\s*of/);
    expect((await beside.documents()).find((one) => one.includes(placeOf(1)))).toMatch(/"id":"rated"[^}]*"done":true/);
  });

  it("shows the list of the workbook that is open, not of the one before", async () => {
    await beside.open();
    await beside.to("#tick-rated");
    await beside.press("Space");
    await beside.frame.locator(".tally", { hasText: "1" }).first().waitFor();
    await beside.sheet.kept();
    await beside.page.locator("#workbooks").press("Enter");
    await beside.page.locator("#books").getByRole("button", { name: "Create" }).press("Enter");
    await beside.page.locator("#books .said").getByText("It is open").waitFor();
    await beside.page.keyboard.press("Escape");
    await beside.frame
      .getByText(/^\s*0\s*of \d+ checked/)
      .first()
      .waitFor();
    await beside.page.locator("#workbooks").press("Enter");
    await beside.page.locator('[data-book="Invented shop"]').getByRole("button", { name: "Open" }).press("Enter");
    await beside.frame
      .getByText(/^\s*1\s*of \d+ checked/)
      .first()
      .waitFor();
  });

  it("loses nothing by a reload in the middle of a word", async () => {
    await beside.open();
    await beside.to("#change-gauge");
    await beside.press("Enter");
    await beside.page.keyboard.type(" (half a wor");
    await beside.sheet.reload();
    await beside.find();
    await beside.frame.locator("#item-text").waitFor();
    expect(await beside.frame.locator("#item-text").inputValue()).toContain("(half a wor");
  });

  it("never lets a key reach a cell once a button of the pane has vanished", async () => {
    const before = await beside.page.locator("#mirror").textContent();
    await beside.open();
    await beside.to("#change-rated");
    await beside.press("Enter");
    await beside.to("Remove");
    await beside.press("Enter");
    await beside.page.keyboard.type("oops");
    await beside.press("Enter");
    expect(await beside.page.locator("#mirror").textContent()).toBe(before);
    expect(await beside.page.evaluate(() => document.activeElement?.tagName)).toBe("IFRAME");
  });

  it("changes nothing of a workbook that another tab has, says why, and keeps what was ticked until it may", async () => {
    await beside.sheet.kept();
    const first = beside.sheet;
    await beside.begin(beside.made, first.page.context());
    await beside.open();
    await beside.to("#tick-rated");
    await beside.press("Space");
    await beside.frame.locator(".notice.failed").waitFor();
    expect(await beside.frame.locator(".notice.failed").textContent()).toContain("open in another tab");
    await first.page.close();
    await beside.sheet.kept();
    await beside.frame.locator(".notice.failed").waitFor({ state: "detached" });
    await beside.sheet.kept();
    await beside.sheet.reload();
    await beside.find();
    expect(await beside.frame.locator(".tally").first().textContent()).toMatch(/^\s*1\s*of/);
  });

  it.each([
    { what: "damaged", xml: `<checklist xmlns="${placeOf(1)}" version="1">{"half": </checklist>`, says: "damaged" },
    { what: "newer", xml: `<checklist xmlns="${placeOf(1)}" version="9"/>`, says: "newer Porewise" },
  ])("leaves a $what checklist of a file as it is, and starts a fresh one beside it", async ({ xml, says }) => {
    const file = workbookOf({ sheets: { Club: row(1, f("A1", "1+1")) }, relations: toChecklist, parts: checklistPart(xml) });
    await beside.sheet.give({ name: "club.xlsx", mimeType: "", buffer: Buffer.from(file) });
    await beside.sheet.shows("A1", "2");
    await beside.open();
    await beside.frame.locator(".notice", { hasText: says }).waitFor();
    expect(strFromU8(await beside.downloaded("Save the old list to a file"))).toBe(xml);
    await beside.to("#tick-rated");
    await beside.sheet.keeps(() => beside.press("Space"));
    const kept = await beside.documents();
    expect(kept).toContain(xml);
    expect(kept.some((one) => one.includes(placeOf(2)) && one.includes('"done":true'))).toBe(true);
  });
});
