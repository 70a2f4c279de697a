import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { read } from "@e965/xlsx";
import { convert } from "../judge/libreoffice";
import { costs } from "../judge/madebylibreoffice";
import { needing } from "../needing";
import { cellIn, f, row, textsOf, workbookOf } from "../sheet/file/workbooks";
import { type Sheet, type Site, site } from "./driver";

const root = join(__dirname, "../..");

/** 2.5 × 31.50 + 3 × 4.25 + 0.25 × 12 = 94.50; over 37 good pieces; at a margin of 45 %. */
const due = { run: 94.5, piece: 94.5 / 37, price: 4.64, two: 9.28 };

const typed = {
  B12: "=PORE.RUNCOST(B4:B7,C4:C7)",
  B13: "=PORE.PIECECOST(B12,B10,B11)",
  B14: "=PORE.PRICETAG(B13,margin)",
};

const valuesIn = (file: string, sheet: string): Record<string, unknown> => {
  const cells = read(readFileSync(file)).Sheets[sheet];
  return Object.fromEntries(Object.keys(cells).map((address) => [address, cells[address].v]));
};

needing("browser", "spreadsheet")("a costing workbook of the shop's own", () => {
  let made: Site;
  let sheet: Sheet;
  const at = (name: string) => join(made.folder, name);
  const name = () => sheet.page.locator("#workbooks").textContent();

  beforeAll(async () => {
    made = await site();
    for (const folder of ["anew", "kept"]) mkdirSync(at(folder));
    writeFileSync(at("costs.xlsx"), costs());
    sheet = await made.visit();
  });
  afterAll(async () => {
    await made?.close();
  });

  it("opens from disk beside the workbook that is there", async () => {
    await sheet.give(at("costs.xlsx"));
    await sheet.turn("June batch");
    await sheet.shows("D8", "94.5");
    expect(await sheet.words("E4")).toBe("3/4");
    expect(await name()).toBe("costs");
  });

  it("takes three formulas over its own cells", async () => {
    for (const [address, formula] of Object.entries(typed)) await sheet.type(address, formula);
    await sheet.shows("B12", "94.50");
    await sheet.shows("B13", "2.55");
    await sheet.shows("B14", "4.64");
    await sheet.shows("B15", "9.28");
  });

  it("is saved with them as formulas, and with its print set-up", async () => {
    const download = sheet.page.waitForEvent("download");
    await sheet.page.getByRole("button", { name: "Save as xlsx" }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe("costs.xlsx");
    await file.saveAs(at("saved.xlsx"));
    const parts = textsOf(readFileSync(at("saved.xlsx")));
    const june = parts["xl/worksheets/sheet2.xml"];
    expect(cellIn(june, "B12")).toMatch(/<f t="array" ref="B12">_xldudf_PORE_RUNCOST\(B4:B7,C4:C7\)<\/f><v>94.5<\/v>/);
    expect(cellIn(june, "B14")).toMatch(/<f t="array" ref="B14">_xldudf_PORE_PRICETAG\(B13,margin\)<\/f><v>4.64<\/v>/);
    expect(june).toMatch(/<pageSetup [^>]*paperSize=/);
    expect(parts["xl/workbook.xml"]).toMatch(/name="margin"[^>]*>Rates!\$B\$6</);
  });

  // LibreOffice calculates what has the form of Excel's dynamic arrays even where it is told to keep values: it knows no PORE there.
  it("opens in LibreOffice: what was there calculates, what rests on the three stands", () => {
    const kept = valuesIn(convert(at("saved.xlsx"), "xlsx", at("kept"), true), "June batch");
    expect(kept).toMatchObject({ D4: 78.75, D8: 94.5, E4: "3/4", B15: due.two });
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
    await sheet.page.evaluate((base64) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([bytes], "again.xlsx"));
      for (const name of ["dragover", "drop"])
        document.getElementById("grid")!.dispatchEvent(new DragEvent(name, { dataTransfer, bubbles: true, cancelable: true }));
    }, data);
    await sheet.page.locator("#workbooks").getByText("again").waitFor();
    await sheet.turn("June batch");
    await sheet.shows("B14", "4.64");
    await sheet.type("B10", "20");
    await sheet.shows("B14", "10.11");
  });

  it("tells what it does not know of a file before it opens it", async () => {
    const parts = { "xl/vbaProject.bin": "x" };
    writeFileSync(at("remarks.xlsx"), workbookOf({ sheets: { Remarks: row(1, f("A1", "NOSUCH(1)")) }, parts }));
    await sheet.give(at("remarks.xlsx"));
    await sheet.page.locator("#ask[open]").waitFor();
    expect(await sheet.page.locator("#ask-title").textContent()).toBe("Open remarks.xlsx?");
    const said = await sheet.page.locator("#ask-words").textContent();
    expect(said).not.toContain("does not keep");
    expect(said).toContain("does not know show an error and are saved unchanged: Remarks!A1.");
    expect(said).toContain("Your file on disk is not changed.");
    await sheet.answer("Cancel");
    expect(await name()).toBe("again");
    await sheet.give(at("remarks.xlsx"));
    await sheet.answer("Open");
    await sheet.shows("A1", /NOSUCH|#NAME/);
    await sheet.page.locator("#workbooks").getByText("remarks").waitFor();
    await sheet.page.locator("#workbooks").click();
    await sheet.page.locator('[data-book="again"]').getByRole("button", { name: "Open" }).click();
    await sheet.shows("B14", "10.11");
  });

  it("says in words what is no workbook, and leaves the page as it is", async () => {
    writeFileSync(at("notes.xlsx"), "two quarts left");
    await sheet.give(at("notes.xlsx"));
    await sheet.page.locator("#ask[open]").waitFor();
    expect(await sheet.page.locator("#ask-words").textContent()).toBe("notes.xlsx does not open: it is not a workbook.");
    await sheet.answer("OK");
    await sheet.shows("B14", "10.11");
  });

  it("raises no error on the way", () => expect(made.troubles).toEqual([]));
});
