import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Platform } from "../../src/excel/insert";
import type { HostInBrowser } from "./hostinbrowser";

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

/** The tests of inserting the sheets of a file. */
export function insertsSheets(excel: HostInBrowser): void {
  const insert = (platform: Platform, sheets: string[]) =>
    excel.page.evaluate(
      async ([bytes, platform, sheets]) => {
        begin(platform as Platform);
        const shares: number[] = [];
        const work = { progress: (share: number) => void shares.push(share), stop: new AbortController().signal };
        return { ended: await host.insert(Uint8Array.from(bytes as number[]), sheets as string[], work), shares };
      },
      [[...file], platform, sheets] as const,
    );
  const insertedFile = async () => unzipSync(Buffer.from(await excel.page.evaluate(() => book.inserted as string), "base64"));
  const names = () => excel.page.evaluate(() => book.sheets.map((sheet: { Name: string }) => sheet.Name));

  it("come in at the end with their formulas put in again", async () => {
    const { ended, shares } = await insert("desktop", ["Blanks", "Sheet1"]);
    expect(ended).toEqual({ done: true, words: "Inserted at the end: Blanks, Sheet1 (2). Undo does not reach back past this." });
    expect(await excel.cellAt("Blanks!A1")).toMatchObject({ formula: "=PORE.DYE(2)", value: 1 });
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
    await excel.page.evaluate(() => void Object.assign(book, { insertion: "AccessDenied" }));
    expect((await insert("desktop", ["Blanks", "Today"])).ended).toMatchObject({ done: false });
    expect(await names()).toEqual(["Sheet1"]);
  });

  it("go out again when stopped", async () => {
    const ended = await excel.page.evaluate(
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
    expect(await excel.page.evaluate((bytes) => host.open(Uint8Array.from(bytes), "it.xlsx"), [...file])).toEqual({ done: true });
    expect(await excel.page.evaluate(() => book.opened)).toEqual([Buffer.from(file).toString("base64")]);
  });
}
