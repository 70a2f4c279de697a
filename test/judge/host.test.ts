import { needing } from "../needing";
import { hostInBrowser } from "./hostinbrowser";
import { insertsSheets } from "./insertssheets";

needing("browser")("Excel's host under the vendor's library", () => {
  const excel = hostInBrowser();
  const { put, cellAt, select } = excel;
  const look = { formats: ["0.00"], rows: 1 };

  it("writes a formula and its format into the selected cell", async () => {
    const ended = await excel.page.evaluate((look) => host.write("=PORE.DYE(2)", look, false), look);
    expect(ended).toEqual({ done: true, words: "Formula inserted in B2." });
    expect(await cellAt("Sheet1!B2")).toMatchObject({ formula: "=PORE.DYE(2)", format: "0.00" });
  });

  it("never writes over a filled cell before it is told to", async () => {
    await put("Sheet1!B2", { value: 12 });
    expect(await excel.page.evaluate((look) => host.write("=1", look, false), look)).toMatchObject({
      done: false,
      filled: true,
      words: "B2 is not empty.",
    });
    expect(await cellAt("Sheet1!B2")).toMatchObject({ value: 12 });
    expect(await excel.page.evaluate((look) => host.write("=PORE.DYE(2)", look, true), look)).toMatchObject({ done: true });
  });

  it("leaves what stands where the answer would spill", async () => {
    await put("Sheet1!C4", { value: "mine" });
    const ended = await excel.page.evaluate(() => host.write("=PORE.PLAN(A1)", { formats: ["0", "0"], rows: 3 }, false));
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
    await excel.page.evaluate(act);
    const ended = await excel.page.evaluate((look) => host.write("=1", look, false), look);
    expect(ended).toMatchObject({ done: false, words: expect.stringContaining(says) });
  });

  it("reads ranges and names, errors as errors, and nothing where there is none", async () => {
    await put("Sheet1!A1", { value: 6 });
    await put("Sheet1!A2", { value: "#N/A" });
    await excel.page.evaluate(() => void Object.assign(book.names, { MyShop: ["Sheet1", "A1:A3"] }));
    const cells = [[6], [{ error: "#N/A", message: "" }], [""]];
    expect(await excel.page.evaluate(() => host.read("Sheet1!A1:A3"))).toEqual(cells);
    expect(await excel.page.evaluate(() => host.read("MyShop"))).toEqual(cells);
    expect(await excel.page.evaluate(() => host.read("Nowhere!A1"))).toBeUndefined();
    expect(await excel.page.evaluate(() => host.read("NoName"))).toBeUndefined();
    expect(await excel.page.evaluate(() => host.read("Sheet1!A1:Z1000"))).toBeUndefined();
  });

  describe("the selected cell", () => {
    const record = (value: number) =>
      excel.page.evaluate((answer) => recorded.record("Sheet1!B2", { name: "DYE", cells: [[[2]]], answer: [[answer]] }), value);

    it("is told with its formula and the calls that explain it", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.5 });
      await record(0.5);
      expect(await excel.page.evaluate(() => host.selection())).toEqual({
        ...{ address: "Sheet1!B2", formula: "=PORE.DYE(2)", row: 0, column: 0 },
        calls: [{ name: "DYE", cells: [[[2]]], answer: [[0.5]] }],
      });
    });

    it("is told with the formula that spills into it", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(A1:A9)", value: 0.5 });
      await put("Sheet1!B5", { value: 1, spill: "B2" });
      await record(0.5);
      await select("Sheet1", "B5");
      expect(await excel.page.evaluate(() => host.selection())).toMatchObject({
        address: "Sheet1!B5",
        formula: "=PORE.DYE(A1:A9)",
        row: 3,
        column: 0,
      });
    });

    it("has no calls once it shows another value, and is calculated anew on request", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.7 });
      await record(0.5);
      expect((await excel.page.evaluate(() => host.selection()))!.calls).toBeUndefined();
      expect(await excel.page.evaluate(() => host.recalculate())).toEqual({ done: true });
      expect(await cellAt("Sheet1!B2")).toMatchObject({ formula: "=PORE.DYE(2)", value: 1 });
    });

    it("forgets its calls when rows move, and tells watchers of selections", async () => {
      await put("Sheet1!B2", { formula: "=PORE.DYE(2)", value: 0.5 });
      await record(0.5);
      await excel.page.evaluate(() => {
        (globalThis as any).told = 0;
        host.watch(() => void (globalThis as any).told++);
        // 14 is a selection, 10 a change, in the library's own numbers.
        book.tell(14, { address: "B2", worksheetId: book.sheets[0].Id });
      });
      await excel.page.waitForFunction(() => (globalThis as any).told === 1);
      expect((await excel.page.evaluate(() => host.selection()))!.calls).toHaveLength(1);
      await excel.page.evaluate(() =>
        book.tell(10, {
          type: "WorksheetChanged",
          changeType: "RowInserted",
          address: "1:1",
          worksheetId: book.sheets[0].Id,
          source: "Local",
        }),
      );
      await excel.page.waitForFunction(() => (globalThis as any).told === 2);
      expect((await excel.page.evaluate(() => host.selection()))!.calls).toBeUndefined();
    });
  });

  describe("a part of the workbook", () => {
    const xml = '<checklist xmlns="urn:porewise:checklist" version="1">{}</checklist>';

    it("is undefined, then kept, then changed in its place", async () => {
      expect(await excel.page.evaluate(() => host.readPart("urn:porewise:checklist"))).toBeUndefined();
      expect(await excel.page.evaluate((xml) => host.writePart("urn:porewise:checklist", xml), xml)).toEqual({ done: true });
      await excel.page.evaluate((xml) => host.writePart("urn:porewise:checklist", xml.replace("{}", "[]")), xml);
      expect(await excel.page.evaluate(() => host.readPart("urn:porewise:checklist"))).toBe(xml.replace("{}", "[]"));
      expect(await excel.page.evaluate(() => book.parts.length)).toBe(1);
    });

    it("is refused in words by a workbook that is read only", async () => {
      await excel.page.evaluate(() => void Object.assign(book, { readOnly: true }));
      const ended = await excel.page.evaluate((xml) => host.writePart("urn:porewise:checklist", xml), xml);
      expect(ended).toEqual({ done: false, words: expect.stringContaining("the workbook is read only") });
    });

    it("is never taken for missing where the workbook cannot be asked", async () => {
      await excel.page.evaluate(() => void Object.assign(book, { editing: true }));
      await expect(excel.page.evaluate(() => host.readPart("urn:porewise:checklist"))).rejects.toThrow("press Enter or Esc");
    });
  });

  describe("sheets of a file", () => insertsSheets(excel));

  describe("formulas that show #NAME?", () => {
    const again = (where: "selection" | "workbook") =>
      excel.page.evaluate((where) => host.reenter(where, { progress: () => undefined, stop: new AbortController().signal }), where);

    it("are put in again: anchors only, protected cells skipped and counted", async () => {
      await put("Sheet1!A1", { formula: "=_xldudf_PORE_DYE(2)", value: "#NAME?" });
      await put("Sheet1!A2", { formula: "=_xldudf_PORE_DYE(2)", value: "#NAME?", spill: "A1" });
      await put("Sheet1!A3", { formula: "=SUM(B1)", value: "#NAME?" });
      await put("Sheet1!A4", { formula: "=PORE.DYE(3)", value: 0.75 });
      await excel.page.evaluate(() => {
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
    await excel.page.evaluate(() =>
      host.printSheet("Safety list", [
        ["open", "=1+1", "why"],
        ["Oven", "", ""],
        ["open", "door", ""],
      ]),
    );
    const ended = await excel.page.evaluate(() => host.printSheet("Safety list", [["done", "words", ""]]));
    expect(ended).toEqual({ done: true, words: "The list is on the sheet Safety list (2)." });
    expect(await cellAt("Safety list!B1")).toEqual({ format: "@", value: "=1+1", bold: true });
    expect(await cellAt("Safety list!A2")).toMatchObject({ value: "Oven", bold: true });
    expect(await cellAt("Safety list!A3")).not.toHaveProperty("bold");
    expect(await excel.page.evaluate(() => book.sheet("Safety list").PageLayout)).toMatchObject({
      ...{ Orientation: "Landscape", titles: "$1:$1" },
    });
  });
});
