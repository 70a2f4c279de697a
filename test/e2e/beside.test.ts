import { readFileSync } from "node:fs";
import { read } from "@e965/xlsx";
import { strFromU8, unzipSync } from "fflate";
import type { Frame } from "playwright-core";
import { placeOf } from "../../src/checklist/part";
import { needing } from "../needing";
import { f, row, workbookOf } from "../sheet/file/workbooks";
import { tabTo } from "../taskpane/pane";
import { type Sheet, type Site, site } from "./driver";

/** A cell of the sheet Start that holds nothing. */
const free = "K3";

const checklistPart = (xml: string): Record<string, string> => ({ "customXml/item1.xml": xml });
const toChecklist =
  '<Relationship Id="x1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>';

needing("browser")("the pane beside the embedded sheet, by keyboard alone", () => {
  let made: Site;
  let sheet: Sheet;
  let pane: Frame;

  const press = async (...keys: string[]) => {
    for (const key of keys) await sheet.page.keyboard.press(key);
  };
  const to = (wanted: string) => tabTo(sheet.page, pane, wanted);
  const said = () => pane.locator(".said");
  const focused = () => pane.evaluate(() => document.activeElement?.id ?? "");
  const tabs = () => sheet.page.locator(".o-sheet").allTextContents();

  async function paneOf(): Promise<Frame> {
    await sheet.page.locator("#pane iframe").contentFrame().locator("pore-app .tabs").waitFor();
    return sheet.page.frames().find((frame) => frame.url().endsWith("pane.html"))!;
  }

  /** From wherever the focus is to the button of the pane, and into it. */
  async function openPane(): Promise<void> {
    const inHead = () => sheet.page.evaluate(() => document.activeElement?.closest("#head") !== null);
    const onButton = () => sheet.page.evaluate(() => document.activeElement?.id === "functions");
    for (let i = 0; i < 8 && !(await inHead()); i++) await press("F6");
    for (let i = 0; i < 12 && !(await onButton()); i++) await press("Tab");
    await press("Enter");
    pane = await paneOf();
    await sheet.page.waitForFunction(() => document.activeElement?.tagName === "IFRAME");
    // Code of a view comes when it is looked at: keys that come sooner walk past it and out of the pane.
    await pane.locator("[id^=panel-] > *").first().waitFor({ state: "attached" });
  }

  async function view(name: string): Promise<void> {
    const order = ["Safety", "Workbook", "Functions", "Working"];
    await pane.locator('[role="tab"][aria-selected="true"], fluent-tab[aria-selected="true"]').first().waitFor();
    await to("Safety");
    await press(...Array<string>(order.indexOf(name)).fill("ArrowRight"));
    await pane.locator(`#panel-${name.toLowerCase()} > *`).waitFor();
  }

  async function downloaded(button: string): Promise<Uint8Array> {
    await to(button);
    return pressed(() => press("Enter"));
  }

  /** What comes down when something is pressed. */
  async function pressed(press: () => Promise<void>): Promise<Uint8Array> {
    const download = sheet.page.waitForEvent("download");
    await press();
    return readFileSync(await (await download).path());
  }

  /** The documents in the workbook's file. */
  async function documents(): Promise<string[]> {
    const parts = unzipSync(await pressed(() => sheet.page.locator("#save").press("Enter")));
    const own = Object.entries(parts).filter(([name]) => /^customXml\/item\d+\.xml$/.test(name));
    return own.map(([, bytes]) => strFromU8(bytes));
  }

  beforeAll(async () => {
    made = await site();
  });
  afterAll(async () => {
    await made?.close();
  });
  beforeEach(async () => {
    sheet = await made.visit();
  });
  afterEach(async () => {
    await sheet.page.context().close();
    // What the browser makes of broken XML is a page of its own with a style of its own, which the policy keeps out.
    expect(made.troubles.splice(0).filter((words) => !words.startsWith("Applying inline style"))).toEqual([]);
    expect(made.requests.splice(0).filter((url) => !url.startsWith(made.served.address) && !/^(data|blob):/.test(url))).toEqual([]);
  });

  it("keeps the safety list in the workbook and in its file; the sheet Safety and the pane show one list", async () => {
    await openPane();
    await to("#tick-rated");
    await press("Space");
    await to("Add an item to Oven");
    await press("Enter");
    await sheet.page.keyboard.type("=1+1 is on the door");
    await to("Keep");
    await press("Enter");
    await pane.locator("#change-own-1").waitFor();
    expect(await focused()).toBe("change-own-1");
    await sheet.turn("Safety");
    const row = await sheet.page.locator("#mirror td").getByText("=1+1 is on the door", { exact: true }).getAttribute("data-cell");
    expect(await sheet.words(row!.replace("C", "B"))).toBe("Oven");
    await sheet.page.locator("#mirror td[data-column='0']").getByText("x", { exact: true }).first().waitFor({ state: "attached" });
    // What is ticked on the sheet is ticked in the pane.
    await sheet.type(row!.replace("C", "A"), "x");
    await pane.locator(".tally").getByText("2", { exact: true }).waitFor();
    await sheet.go(row!.replace("C", "A"));
    await sheet.page.keyboard.press("Delete");
    await pane.locator(".tally").getByText("1", { exact: true }).waitFor();
    await sheet.kept();
    await sheet.reload();
    pane = await paneOf();
    expect(await pane.locator(".tally").first().textContent()).toMatch(/^\s*1\s*of/);
    expect((await documents()).find((one) => one.includes(placeOf(1)))).toMatch(/"id":"rated"[^}]*"done":true/);
  });

  it("inserts sheets of the template, each under a name that is free, and the old state stays a version", async () => {
    await openPane();
    await view("Workbook");
    await pane.locator("#insert").waitFor();
    const before = await tabs();
    for (let i = 0; i < before.length; i++)
      if (before[i] !== "Handout") {
        await to(`#sheet-${i}`);
        await press("Space");
      }
    await to("Insert into this workbook");
    await press("Enter");
    await said().getByText("Inserted at the end").waitFor();
    expect(await said().textContent()).toContain("the button with the workbook's name at the top, then Earlier versions");
    const after = await tabs();
    expect(after.slice(0, before.length)).toEqual(before);
    expect(after.slice(before.length)).toContain("Handout 2");
    expect(await focused()).toBe("insert");
    await sheet.kept();
    expect(await sheet.page.locator("#mirror").textContent()).toMatch(/Porewise [\d.]+\d\. Self-check compares/);
    await sheet.page.locator("#workbooks").press("Enter");
    await sheet.page.locator("#books .versions summary").waitFor();
  });

  it("opens the template as a workbook of its own, and downloads it", async () => {
    await openPane();
    await view("Workbook");
    await to("#units-0");
    await press("ArrowDown");
    await pane.locator("#open").waitFor();
    const file = await downloaded("Download");
    expect(read(file).SheetNames).toContain("Handout");
    await press("Shift+Tab");
    expect(await focused()).toBe("open");
    await press("Enter");
    await sheet.page.locator("#workbooks").getByText("porewise-live-si").waitFor();
    await said().getByText("is open").waitFor();
  });

  it("shows the list of the workbook that is open, not of the one before", async () => {
    await openPane();
    await to("#tick-rated");
    await press("Space");
    await pane.locator(".tally", { hasText: "1" }).first().waitFor();
    await sheet.kept();
    await sheet.page.locator("#workbooks").press("Enter");
    await sheet.page.locator("#books").getByRole("button", { name: "Create" }).press("Enter");
    await sheet.page.locator("#books .said").getByText("It is open").waitFor();
    await sheet.page.keyboard.press("Escape");
    await pane
      .getByText(/^\s*0\s*of \d+ checked/)
      .first()
      .waitFor();
    await sheet.page.locator("#workbooks").press("Enter");
    await sheet.page.locator('[data-book="Invented shop"]').getByRole("button", { name: "Open" }).press("Enter");
    await pane
      .getByText(/^\s*1\s*of \d+ checked/)
      .first()
      .waitFor();
  });

  it("makes a copy with values for people without the functions", async () => {
    await openPane();
    await view("Workbook");
    const copy = read(await downloaded("Make the copy"), { cellFormula: true });
    const formulas = copy.SheetNames.flatMap((name) => Object.values(copy.Sheets[name]).map((cell: any) => cell?.f ?? ""));
    expect(formulas.filter((formula) => /PORE[._]/i.test(formula))).toEqual([]);
    expect(formulas.filter(Boolean).length).toBeGreaterThan(100);
    await said()
      .getByText(/\d+ PORE cells are their values/)
      .waitFor();
  });

  it("puts a formula into the cell, and never over a filled one without asking", async () => {
    await sheet.go(free);
    await openPane();
    await view("Functions");
    await to("How much resin covers the pieces?");
    await press("Enter");
    for (const [field, text] of Object.entries({ chamber: "6", stack: "5", solids: "104" })) {
      await to(`#field-${field}`);
      await sheet.page.keyboard.type(text);
    }
    await to("Insert formula");
    await press("Enter");
    await sheet.shows(free, "1.14");
    await press("Enter");
    await pane.locator("#put-over").waitFor();
    expect(await focused()).toBe("put-over");
    await press("Enter");
    await pane.locator("#put-over").waitFor({ state: "detached" });
    await sheet.shows(free, "1.14");
  });

  it("explains the cell that the grid selects", async () => {
    await sheet.type(free, "=PORE.BAKE(0.75,0.75,5,0.4)");
    await sheet.go(free);
    await openPane();
    await view("Working");
    await pane.locator("#working .call").waitFor();
    expect(await pane.locator(".equation.numbers").textContent()).toContain("until the core reaches 190 °F");
    await press("F6", "F6");
    // Words that are put together from another cell are explained by that cell.
    await sheet.type("K4", `="about "&TEXT(${free},"0")&" min"`);
    await sheet.go("K4");
    await pane.getByText(/^Made from/).waitFor();
    expect(await pane.locator(".equation.numbers").textContent()).toContain("until the core reaches 190 °F");
    await sheet.go("A1");
    await pane.getByText("There is no PORE function in this cell.").waitFor();
  });

  it("loses nothing by a reload in the middle of a word", async () => {
    await openPane();
    await to("#change-gauge");
    await press("Enter");
    await sheet.page.keyboard.type(" (half a wor");
    await sheet.reload();
    pane = await paneOf();
    await pane.locator("#item-text").waitFor();
    expect(await pane.locator("#item-text").inputValue()).toContain("(half a wor");
  });

  it("never lets a key reach a cell once a button of the pane has vanished", async () => {
    const before = await sheet.page.locator("#mirror").textContent();
    await openPane();
    await to("#change-rated");
    await press("Enter");
    await to("Remove");
    await press("Enter");
    await sheet.page.keyboard.type("oops");
    await press("Enter");
    expect(await sheet.page.locator("#mirror").textContent()).toBe(before);
    expect(await sheet.page.evaluate(() => document.activeElement?.tagName)).toBe("IFRAME");
  });

  it("changes nothing of a workbook that another tab has, says why, and keeps what was ticked until it may", async () => {
    await sheet.kept();
    const first = sheet;
    sheet = await made.visit(first.page.context());
    await openPane();
    await to("#tick-rated");
    await press("Space");
    await pane.locator(".notice.failed").waitFor();
    expect(await pane.locator(".notice.failed").textContent()).toContain("open in another tab");
    await first.page.close();
    await sheet.kept();
    await pane.locator(".notice.failed").waitFor({ state: "detached" });
    await sheet.kept();
    await sheet.reload();
    pane = await paneOf();
    expect(await pane.locator(".tally").first().textContent()).toMatch(/^\s*1\s*of/);
  });

  it.each([
    { what: "damaged", xml: `<checklist xmlns="${placeOf(1)}" version="1">{"half": </checklist>`, says: "damaged" },
    { what: "newer", xml: `<checklist xmlns="${placeOf(1)}" version="9"/>`, says: "newer Porewise" },
  ])("leaves a $what checklist of a file as it is, and starts a fresh one beside it", async ({ xml, says }) => {
    const file = workbookOf({ sheets: { Club: row(1, f("A1", "1+1")) }, relations: toChecklist, parts: checklistPart(xml) });
    await sheet.give({ name: "club.xlsx", mimeType: "", buffer: Buffer.from(file) });
    await sheet.shows("A1", "2");
    await openPane();
    await pane.locator(".notice", { hasText: says }).waitFor();
    expect(strFromU8(await downloaded("Save the old list to a file"))).toBe(xml);
    await to("#tick-rated");
    await sheet.keeps(() => press("Space"));
    const kept = await documents();
    expect(kept).toContain(xml);
    expect(kept.some((one) => one.includes(placeOf(2)) && one.includes('"done":true'))).toBe(true);
  });
});
