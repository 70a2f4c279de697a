import { join } from "node:path";
import { build } from "esbuild";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import type { SheetHost } from "../../shared/host";
import type { Platform } from "../../src/excel/insert";
import type { LastCalls } from "../../src/excel/lastcall";
import { launch } from "../../tool/browser";
import { needing } from "../needing";
import { excelBook, openPage } from "./office";

/** Excel's host under the vendor's own library. The workbook behind it is ours: see the folder excel for what it puts on. */
declare global {
  var host: SheetHost;
  var recorded: LastCalls;
  var begin: (platform: Platform) => void;
  var book: any;
}

const entry = `
  import { excelHost } from "./src/excel/host";
  import { LastCalls } from "./src/excel/lastcall";
  globalThis.begin = (platform) => {
    globalThis.recorded = new LastCalls();
    globalThis.host = excelHost({ platform, calls: globalThis.recorded });
  };`;

const file = zipSync({
  "[Content_Types].xml": strToU8(
    '<Types><Override PartName="/xl/worksheets/sheet1.xml" ContentType="s"/><Override PartName="/xl/drawings/drawing1.xml" ContentType="d"/></Types>',
  ),
  "_rels/.rels": strToU8('<Relationships><Relationship Id="a" Type="t/officeDocument" Target="xl/workbook.xml"/></Relationships>'),
  "xl/workbook.xml": strToU8("<workbook/>"),
  "xl/_rels/workbook.xml.rels": strToU8(
    '<Relationships><Relationship Id="a" Type="t/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
  ),
  "xl/worksheets/sheet1.xml": strToU8('<worksheet xmlns:r="r"><sheetData/><drawing r:id="rId1"/></worksheet>'),
  "xl/worksheets/_rels/sheet1.xml.rels": strToU8(
    '<Relationships><Relationship Id="rId1" Type="t" Target="../drawings/drawing1.xml"/></Relationships>',
  ),
  "xl/drawings/drawing1.xml": strToU8("<drawing/>"),
});

needing("browser")("Excel's host under the vendor's library", () => {
  let browser: Browser;
  let page: Page;
  const troubles: string[] = [];

  beforeAll(async () => {
    browser = await launch();
    const { outputFiles } = await build({
      stdin: { contents: entry, resolveDir: join(__dirname, "../.."), loader: "ts" },
      bundle: true,
      format: "iife",
      write: false,
    });
    const files = { "functions.js": outputFiles[0].text, "bridge.js": await excelBook() };
    page = await openPage(browser, files, "judge.html", (trouble) => troubles.push(trouble));
    await page.waitForFunction("globalThis.OfficeExtension?.HostBridge && globalThis.Excel && globalThis.beExcel");
    await page.evaluate("beExcel(); begin('desktop')");
    await page.waitForFunction(() => book.registered.size >= 8);
  });
  afterAll(() => browser?.close());
  beforeEach(() =>
    page.evaluate(() => {
      book.reset();
      recorded.clear();
    }),
  );
  afterEach(() => expect(troubles.splice(0)).toEqual([]));

  const look = { formats: ["0.00"], rows: 1 };
  const put = (address: string, cell: object) =>
    page.evaluate(
      ([at, values]) => {
        const [name, place] = (at as string).split("!");
        const { sheet, row, column } = book.sheet(name).GetRange(place);
        Object.assign(sheet.cell(row, column), values);
      },
      [address, cell] as const,
    );
  const cellAt = (address: string) =>
    page.evaluate((at) => {
      const [name, place] = at.split("!");
      const { sheet, row, column } = book.sheet(name).GetRange(place);
      return sheet.cell(row, column);
    }, address);
  const select = (sheet: string, place: string) => page.evaluate((place) => void Object.assign(book, { selected: place }), [sheet, place]);

  it("writes a formula and its format into the selected cell", async () => {
    const ended = await page.evaluate((look) => host.write("=PORE.DYE(2)", look, false), look);
    expect(ended).toEqual({ done: true, words: "Formula inserted in B2." });
    expect(await cellAt("Sheet1!B2")).toMatchObject({ formula: "=PORE.DYE(2)", format: "0.00" });
  });

  it("never writes over a filled cell before it is told to", async () => {
    await put("Sheet1!B2", { value: 12 });
    expect(await page.evaluate((look) => host.write("=1", look, false), look)).toMatchObject({
      done: false,
      filled: true,
      words: "B2 is not empty.",
    });
    expect(await cellAt("Sheet1!B2")).toMatchObject({ value: 12 });
    expect(await page.evaluate((look) => host.write("=PORE.DYE(2)", look, true), look)).toMatchObject({ done: true });
  });

  it("leaves what stands where the answer would spill", async () => {
    await put("Sheet1!C4", { value: "mine" });
    const ended = await page.evaluate(() => host.write("=PORE.PLAN(A1)", { formats: ["0", "0"], rows: 3 }, false));
    expect(ended).toEqual({ done: false, words: "The answer fills B2:C4, and those cells are not empty: choose another cell." });
    expect(await cellAt("Sheet1!B2")).toEqual({});
  });

  it.each([
    { what: "a protected sheet", act: () => void Object.assign(book.sheet("Sheet1"), { protected: true }), says: "the sheet is protected" },
    {
      what: "a cell being typed into",
      act: () => void Object.assign(book, { editing: true }),
      says: "Finish typing in the cell first: press Enter or Esc",
    },
  ])("tells of $what in plain words", async ({ act, says }) => {
    await page.evaluate(act);
    const ended = await page.evaluate((look) => host.write("=1", look, false), look);
    expect(ended).toMatchObject({ done: false, words: expect.stringContaining(says) });
  });

  it("reads ranges and names, errors as errors, and nothing where there is none", async () => {
    await put("Sheet1!A1", { value: 6 });
    await put("Sheet1!A2", { value: "#N/A" });
    await page.evaluate(() => void Object.assign(book.names, { MyShop: ["Sheet1", "A1:A3"] }));
    const cells = [[6], [{ error: "#N/A", message: "" }], [""]];
    expect(await page.evaluate(() => host.read("Sheet1!A1:A3"))).toEqual(cells);
    expect(await page.evaluate(() => host.read("MyShop"))).toEqual(cells);
    expect(await page.evaluate(() => host.read("Nowhere!A1"))).toBeUndefined();
    expect(await page.evaluate(() => host.read("NoName"))).toBeUndefined();
    expect(await page.evaluate(() => host.read("Sheet1!A1:Z1000"))).toBeUndefined();
  });

  describe("the selected cell", () => {
    const record = (value: number) =>
      page.evaluate((answer) => recorded.record("Sheet1!B2", { name: "DYE", cells: [[[2]]], answer: [[answer]] }), value);

    it("is told with its formula and the calls that explain it", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.5 });
      await record(0.5);
      expect(await page.evaluate(() => host.selection())).toEqual({
        ...{ address: "Sheet1!B2", formula: "=PORE.DYE(2)", row: 0, column: 0 },
        calls: [{ name: "DYE", cells: [[[2]]], answer: [[0.5]] }],
      });
    });

    it("is told with the formula that spills into it", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(A1:A9)", value: 0.5 });
      await put("Sheet1!B5", { value: 1, spill: "B2" });
      await record(0.5);
      await select("Sheet1", "B5");
      expect(await page.evaluate(() => host.selection())).toMatchObject({
        address: "Sheet1!B5",
        formula: "=PORE.DYE(A1:A9)",
        row: 3,
        column: 0,
      });
    });

    it("has no calls once it shows another value, and is calculated anew on request", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.7 });
      await record(0.5);
      expect((await page.evaluate(() => host.selection()))!.calls).toBeUndefined();
      expect(await page.evaluate(() => host.recalculate())).toEqual({ done: true });
      expect(await cellAt("Sheet1!B2")).toMatchObject({ formula: "=PORE.DYE(2)", value: 1 });
    });

    it("forgets its calls when rows move, and tells watchers of selections", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.5 });
      await record(0.5);
      await page.evaluate(() => {
        (globalThis as any).told = 0;
        host.watch(() => void (globalThis as any).told++);
        // 14 is a selection, 10 a change, in the library's own numbers.
        book.tell(14, { address: "B2", worksheetId: book.sheets[0].Id });
      });
      await page.waitForFunction(() => (globalThis as any).told === 1);
      expect((await page.evaluate(() => host.selection()))!.calls).toHaveLength(1);
      await page.evaluate(() =>
        book.tell(10, {
          type: "WorksheetChanged",
          changeType: "RowInserted",
          address: "1:1",
          worksheetId: book.sheets[0].Id,
          source: "Local",
        }),
      );
      await page.waitForFunction(() => (globalThis as any).told === 2);
      expect((await page.evaluate(() => host.selection()))!.calls).toBeUndefined();
    });
  });

  describe("a part of the workbook", () => {
    const xml = '<checklist xmlns="urn:porewise:checklist" version="1">{}</checklist>';

    it("is undefined, then kept, then changed in its place", async () => {
      expect(await page.evaluate(() => host.readPart("urn:porewise:checklist"))).toBeUndefined();
      expect(await page.evaluate((xml) => host.writePart("urn:porewise:checklist", xml), xml)).toEqual({ done: true });
      await page.evaluate((xml) => host.writePart("urn:porewise:checklist", xml.replace("{}", "[]")), xml);
      expect(await page.evaluate(() => host.readPart("urn:porewise:checklist"))).toBe(xml.replace("{}", "[]"));
      expect(await page.evaluate(() => book.parts.length)).toBe(1);
    });

    it("is refused in words by a workbook that is read only", async () => {
      await page.evaluate(() => void Object.assign(book, { readOnly: true }));
      const ended = await page.evaluate((xml) => host.writePart("urn:porewise:checklist", xml), xml);
      expect(ended).toEqual({ done: false, words: expect.stringContaining("the workbook is read only") });
    });

    it("is never taken for missing where the workbook cannot be asked", async () => {
      await page.evaluate(() => void Object.assign(book, { editing: true }));
      await expect(page.evaluate(() => host.readPart("urn:porewise:checklist"))).rejects.toThrow("press Enter or Esc");
    });
  });

  describe("sheets of a file", () => {
    const insert = (platform: Platform, sheets: string[]) =>
      page.evaluate(
        async ([bytes, platform, sheets]) => {
          begin(platform as Platform);
          const shares: number[] = [];
          const work = { progress: (share: number) => void shares.push(share), stop: new AbortController().signal };
          return { ended: await host.insert(Uint8Array.from(bytes as number[]), sheets as string[], work), shares };
        },
        [[...file], platform, sheets] as const,
      );
    const insertedFile = async () => unzipSync(Buffer.from(await page.evaluate(() => book.inserted as string), "base64"));
    const names = () => page.evaluate(() => book.sheets.map((sheet: { Name: string }) => sheet.Name));

    it("come in at the end with their formulas put in again", async () => {
      const { ended, shares } = await insert("desktop", ["Blanks", "Sheet1"]);
      expect(ended).toEqual({ done: true, words: "Inserted at the end: Blanks, Sheet1 (2). Undo does not reach back past this." });
      expect(await cellAt("Blanks!A1")).toMatchObject({ formula: "=PORE.DYE(2)", value: 1 });
      expect(shares.at(-1)).toBe(1);
      expect(Object.keys(await insertedFile())).toContain("xl/drawings/drawing1.xml");
    });

    it("come in without drawings on the web", async () => {
      expect((await insert("web", ["Blanks"])).ended).toMatchObject({ done: true });
      const parts = await insertedFile();
      expect(Object.keys(parts)).not.toContain("xl/drawings/drawing1.xml");
      expect(strFromU8(parts["xl/worksheets/sheet1.xml"])).toBe('<worksheet xmlns:r="r"><sheetData/></worksheet>');
      expect(strFromU8(parts["xl/worksheets/_rels/sheet1.xml.rels"])).toBe("<Relationships></Relationships>");
      expect(strFromU8(parts["[Content_Types].xml"])).not.toContain("drawing");
    });

    it("leave nothing half done when Excel refuses", async () => {
      await page.evaluate(() => void Object.assign(book, { insertion: "AccessDenied" }));
      expect((await insert("desktop", ["Blanks", "Today"])).ended).toMatchObject({ done: false });
      expect(await names()).toEqual(["Sheet1"]);
    });

    it("go out again when stopped", async () => {
      const ended = await page.evaluate(
        (bytes) => {
          const halt = new AbortController();
          return host.insert(Uint8Array.from(bytes), ["Blanks"], { progress: () => halt.abort(), stop: halt.signal });
        },
        [...file],
      );
      expect(ended).toEqual({ done: false, words: "Stopped: the workbook is as it was." });
      expect(await names()).toEqual(["Sheet1"]);
    });

    it("open as a new workbook", async () => {
      expect(await page.evaluate((bytes) => host.open(Uint8Array.from(bytes), "it.xlsx"), [...file])).toEqual({ done: true });
      expect(await page.evaluate(() => book.opened)).toEqual([Buffer.from(file).toString("base64")]);
    });
  });

  describe("formulas that show #NAME?", () => {
    const again = (where: "selection" | "workbook") =>
      page.evaluate((where) => host.reenter(where, { progress: () => undefined, stop: new AbortController().signal }), where);

    it("are put in again: anchors only, protected cells skipped and counted", async () => {
      await put("Sheet1!A1", { formula: "=_xldudf_PORE_DYE(2)", value: "#NAME?" });
      await put("Sheet1!A2", { formula: "=_xldudf_PORE_DYE(2)", value: "#NAME?", spill: "A1" });
      await put("Sheet1!A3", { formula: "=SUM(B1)", value: "#NAME?" });
      await put("Sheet1!A4", { formula: "=PORE.DYE(3)", value: 0.75 });
      await page.evaluate(() => {
        const sheet = book.sheet("Sheet1");
        const other = { Id: "{other}", Name: "Other" };
        book.sheets = [
          ...book.sheets,
          Object.assign(Object.create(Object.getPrototypeOf(sheet)), { ...other, cells: new Map(), protected: true }),
        ];
        Object.assign(book.sheet("Other").cell(0, 0), { formula: "=PORE.DYE(2)", value: "#NAME?" });
        Object.assign(book.sheet("Other").cell(1, 0), { formula: "=PORE.DYE(2)", value: "#NAME?", locked: false });
      });
      expect(await again("workbook")).toEqual({ done: true, words: "2 formulas put in again; one protected cell was left as it is." });
      expect(await cellAt("Sheet1!A1")).toMatchObject({ formula: "=PORE.DYE(2)" });
      expect(await cellAt("Sheet1!A2")).toMatchObject({ formula: "=_xldudf_PORE_DYE(2)" });
      expect(await cellAt("Sheet1!A3")).toMatchObject({ value: "#NAME?" });
    });

    it("are looked for in the selection alone where that is asked", async () => {
      await put("Sheet1!A1", { formula: "=PORE.DYE(2)", value: "#NAME?" });
      await select("Sheet1", "B1:B3");
      expect(await again("selection")).toEqual({ done: true, words: "No PORE formula shows #NAME? here." });
    });
  });

  it("puts text on a sheet of its own, and an equals sign stays text", async () => {
    await page.evaluate(() =>
      host.printSheet("Safety list", [
        ["open", "=1+1", "why"],
        ["Oven", "", ""],
        ["open", "door", ""],
      ]),
    );
    const ended = await page.evaluate(() => host.printSheet("Safety list", [["done", "words", ""]]));
    expect(ended).toEqual({ done: true, words: "The list is on the sheet Safety list (2)." });
    expect(await cellAt("Safety list!B1")).toEqual({ format: "@", value: "=1+1", bold: true });
    expect(await cellAt("Safety list!A2")).toMatchObject({ value: "Oven", bold: true });
    expect(await cellAt("Safety list!A3")).not.toHaveProperty("bold");
    expect(await page.evaluate(() => book.sheet("Safety list").PageLayout)).toMatchObject({
      ...{ Orientation: "Landscape", titles: "$1:$1" },
    });
  });
});
