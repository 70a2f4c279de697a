import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read } from "@e965/xlsx";
import type { Browser, Page } from "playwright-core";
import { findBrowser, launch } from "../../tool/browser";
import { buildPage } from "../../tool/page";
import { type Served, serve } from "../../tool/serve";
import { convert, hasLibreOffice } from "../judge/libreoffice";
import { costs } from "../sheet/costs";
import { cellIn, textsOf } from "../sheet/workbooks";

jest.setTimeout(120_000);

const root = join(__dirname, "../..");
let folder: string;
let served: Served;
let browser: Browser;
let page: Page;
const troubles: string[] = [];

/** 2.5 × 31.50 + 3 × 4.25 + 0.25 × 12 = 94.50; over 37 good pieces; at a margin of 45 %. */
const due = { run: 94.5, piece: 94.5 / 37, price: 4.64, two: 9.28 };

const typed = {
  B12: "=PORE.RUNCOST(B4:B7,C4:C7)",
  B13: "=PORE.PIECECOST(B12,B10,B11)",
  B14: "=PORE.PRICETAG(B13,margin)",
};

const words = (address: string) => page.locator(`#mirror [data-cell="${address}"]`).textContent();

async function shows(address: string, expected: string): Promise<void> {
  const until = Date.now() + 5_000;
  let seen: string | null = null;
  while (Date.now() < until) {
    seen = await words(address);
    if (seen === expected) return;
    await page.waitForTimeout(50);
  }
  throw new Error(`${address} shows “${seen}”, and ${expected} was due`);
}

async function type(address: string, formula: string): Promise<void> {
  const box = page.locator(".o-named-range-selector-container input");
  await box.click();
  await box.fill(address);
  await page.keyboard.press("Enter");
  await page.keyboard.type(formula, { delay: 20 });
  await page.keyboard.press("Enter");
}

const valuesIn = (file: string, sheet: string): Record<string, unknown> => {
  const cells = read(readFileSync(file)).Sheets[sheet];
  return Object.fromEntries(Object.keys(cells).map((address) => [address, cells[address].v]));
};

async function openFile(file: string): Promise<void> {
  await page.locator("#file").setInputFiles(file);
  await page.locator("#ask[open]").waitFor();
}

async function agree(): Promise<void> {
  const loaded = page.waitForEvent("load");
  await page.locator("#ask").getByRole("button", { name: "Open", exact: true }).click();
  await loaded;
  await page.waitForSelector("html[data-ready]");
}

(findBrowser() && hasLibreOffice ? describe : describe.skip)("a costing workbook of the shop's own", () => {
  const at = (name: string) => join(folder, name);

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "costing-"));
    for (const name of ["site", "anew", "kept"]) mkdirSync(at(name));
    writeFileSync(at("costs.xlsx"), costs());
    await buildPage(at("site"));
    served = await serve(at("site"), { port: 0 });
    browser = await launch();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true })).newPage();
    page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
    page.on("pageerror", (error) => troubles.push(String(error)));
    await page.goto(served.address);
    await page.waitForSelector("html[data-ready]");
  });

  afterAll(async () => {
    await browser?.close();
    await served?.close();
    rmSync(folder, { recursive: true });
  });

  it("opens from disk when told so, and not before", async () => {
    const before = await words("B7");
    await openFile(at("costs.xlsx"));
    expect(await page.locator("#ask-title").textContent()).toBe("Open costs.xlsx?");
    expect(await page.locator("#ask-words").textContent()).toContain("Your file on disk stays as it is");
    await page.getByRole("button", { name: "Keep my work" }).click();
    expect(await words("B7")).toBe(before);
    await openFile(at("costs.xlsx"));
    await agree();
    await page.getByText("June batch", { exact: true }).first().click();
    await shows("D8", "94.5");
    expect(await words("E4")).toBe("3/4");
  });

  it("takes three formulas over its own cells", async () => {
    for (const [address, formula] of Object.entries(typed)) await type(address, formula);
    await shows("B12", "94.50");
    await shows("B13", "2.55");
    await shows("B14", "4.64");
    await shows("B15", "9.28");
  });

  it("is saved with them as formulas, and with its print set-up", async () => {
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save as xlsx" }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe("costs.xlsx");
    await file.saveAs(at("saved.xlsx"));
    const parts = textsOf(readFileSync(at("saved.xlsx")));
    const sheet = parts["xl/worksheets/sheet1.xml"];
    expect(cellIn(sheet, "B12")).toMatch(/<f>_xldudf_PORE_RUNCOST\(B4:B7,C4:C7\)<\/f><v>94.5<\/v>/);
    expect(cellIn(sheet, "B14")).toMatch(/<f>_xldudf_PORE_PRICETAG\(B13,margin\)<\/f><v>4.64<\/v>/);
    expect(sheet).toMatch(/<pageSetup [^>]*paperSize=/);
    expect(parts["xl/workbook.xml"]).toContain('<definedName name="margin">Rates!$B$6</definedName>');
  });

  it("opens in LibreOffice: what was there calculates, the three results stand", () => {
    const kept = valuesIn(convert(at("saved.xlsx"), "xlsx", at("kept"), true), "June batch");
    expect(kept).toMatchObject({ D4: 78.75, D8: 94.5, E4: "3/4", B12: due.run, B14: due.price, B15: due.two });
    expect(kept.B13).toBeCloseTo(due.piece, 9);
    const anew = valuesIn(convert(at("saved.xlsx"), "xlsx", at("anew")), "June batch");
    expect(anew).toMatchObject({ C4: 31.5, D4: 78.75, D6: 12.75, D7: 3, D8: 94.5 });
  });

  it("is calculated by recalc where LibreOffice knows the three no more", () => {
    const forgotten = at("anew/saved.xlsx");
    expect(valuesIn(forgotten, "June batch").B12).not.toBe(due.run);
    const said = execFileSync(process.execPath, ["--import", "tsx", "sheet/recalc.ts", forgotten, "-o", at("out.xlsx")], { cwd: root });
    expect(String(said)).toMatch(/^3 PORE formulas, no errors\n$/);
    const out = valuesIn(at("out.xlsx"), "June batch");
    expect(out).toMatchObject({ D8: 94.5, B12: due.run, B14: due.price, B15: due.two });
    expect(out.B13).toBeCloseTo(due.piece, 9);
  });

  it("opens again on the page, dropped this time, its formulas still formulas", async () => {
    const data = readFileSync(at("out.xlsx")).toString("base64");
    await page.evaluate((base64) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([bytes], "again.xlsx"));
      for (const name of ["dragover", "drop"])
        document.getElementById("grid")!.dispatchEvent(new DragEvent(name, { dataTransfer, bubbles: true, cancelable: true }));
    }, data);
    await page.locator("#ask[open]").waitFor();
    expect(await page.locator("#ask-title").textContent()).toBe("Open again.xlsx?");
    await agree();
    await page.getByText("June batch", { exact: true }).first().click();
    await shows("B14", "4.64");
    await type("B10", "20");
    await shows("B14", "10.11");
  });

  it("says in words what is no workbook, and leaves the page as it is", async () => {
    writeFileSync(at("notes.xlsx"), "two quarts left");
    await openFile(at("notes.xlsx"));
    expect(await page.locator("#ask-words").textContent()).toBe("notes.xlsx does not open: it is not a workbook.");
    await page.getByRole("button", { name: "Understood" }).click();
    await shows("B14", "10.11");
  });

  it("raises no error on the way", () => expect(troubles).toEqual([]));
});
