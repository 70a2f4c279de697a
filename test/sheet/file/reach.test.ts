import "./dom";
import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { bookOf } from "../../../sheet/book";
import { model } from "../../../sheet/engine";
import { structureIn } from "../../../sheet/file/kept/structure";
import { type Opened, opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { f, row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const cell = (address: string, inner: string, more = "") => `<c r="${address}"${more}>${inner}</c>`;
const rows = (sheet: number) =>
  Array.from({ length: 12 }, (_, i) =>
    row(
      i + 1,
      cell(`A${i + 1}`, `<v>${i * sheet}</v>`, ' s="1"'),
      cell(`B${i + 1}`, `<v>${i % 2}</v>`, ' t="s"'),
      i ? cell(`C${i + 1}`, '<f t="shared" si="0"/><v>0</v>') : cell("C1", '<f t="shared" si="0" ref="C1:C12">A1*2</f><v>0</v>'),
      f(`D${i + 1}`, `SUM(A$1:A${i + 1})`, "<v>0</v>"),
    ),
  ).join("");
const workbook: Opened = opened(
  workbookOf({
    sheets: {
      First: `${rows(1)}|<mergeCells count="1"><mergeCell ref="F2:G3"/></mergeCells>`,
      Other: rows(2),
      Third: row(1, f("A1", "First!A3+Other!A3", "<v>6</v>")),
    },
    strings: ["oak", "ash"],
  }),
  engine,
);

const at = fc.record({ col: fc.nat(9), row: fc.nat(14) });
const zone = at.chain(({ col, row }) =>
  fc.record({ width: fc.nat(3), height: fc.nat(3) }).map(({ width, height }) => ({
    left: col,
    top: row,
    right: col + width,
    bottom: row + height,
  })),
);
type Change = readonly [type: string, payload: object];
const change: fc.Arbitrary<Change> = fc.oneof(
  at.chain((place) =>
    fc.constantFrom("12", "oak", "", "=SUM(A1:B9)", "1/2/2026", "50%").map((content): Change => ["UPDATE_CELL", { ...place, content }]),
  ),
  zone.chain((one) =>
    fc
      .constantFrom({ style: { bold: true } }, { style: { align: "right" } }, { style: { fillColor: "#FF0000" } }, { format: "0.00" })
      .map((look): Change => ["SET_FORMATTING", { target: [one], ...look }]),
  ),
  zone.map((one): Change => ["DELETE_CONTENT", { target: [one] }]),
  zone.map((one): Change => ["CLEAR_FORMATTING", { target: [one] }]),
  zone.chain((one) =>
    fc
      .constantFrom("all", "external", "top", "h")
      .map((position): Change => ["SET_ZONE_BORDERS", { target: [one], border: { position, style: "thin", color: "#000000" } }]),
  ),
  zone.map((one): Change => ["ADD_MERGE", { target: [one], force: true }]),
  fc.nat(9).map((col): Change => ["RESIZE_COLUMNS_ROWS", { dimension: "COL", elements: [col], size: 90 }]),
  fc.nat(9).map((row): Change => ["HIDE_COLUMNS_ROWS", { dimension: "ROW", elements: [row] }]),
);

/** The workbook with some changes made on its first sheets. */
function changed(changes: readonly (readonly [sheet: number, change: Change])[]) {
  const page = model(JSON.parse(JSON.stringify(workbook.book)));
  const ids = page.getters.getSheetIds();
  for (const [sheet, [type, payload]] of changes) page.dispatch(type as never, { sheetId: ids[sheet], ...payload } as never);
  return page;
}

/** As a workbook that was kept before this was written down. */
function forget(page: engine.Model): void {
  const plugins = (page as unknown as { corePlugins: readonly { reached?: unknown }[] }).corePlugins;
  plugins.find((plugin) => "reached" in plugin)!.reached = undefined;
}

describe("what saving compares", () => {
  it("is where something was done, and gives the file that comparing everything gives", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(fc.nat(2), change), { minLength: 1, maxLength: 6 }), async (changes) => {
        const page = changed(changes);
        const file = textsOf(await saved(page, workbook, engine));
        forget(page);
        expect(structureIn(page).reached).toBeUndefined();
        expect(file).toEqual(textsOf(await saved(page, workbook, engine)));
      }),
      { numRuns: 12 },
    );
  });

  it("is nothing where nothing was done, or all of it undone: the file is the file that came", async () => {
    const page = changed([[0, ["UPDATE_CELL", { col: 0, row: 40, content: "7" }]]]);
    expect(structureIn(page).reached).toEqual({ [page.getters.getSheetIds()[0]]: ["A41"] });
    expect(await saved(page, workbook, engine)).not.toBe(workbook.file);
    page.dispatch("REQUEST_UNDO");
    expect(structureIn(page).reached).toEqual({});
    expect(await saved(page, workbook, engine)).toBe(workbook.file);
  });

  it("is kept with the workbook, and is everything where cells moved or a sheet got another name", () => {
    const page = changed([[1, ["SET_FORMATTING", { target: [{ left: 0, right: 1, top: 0, bottom: 3 }], style: { bold: true } }]]]);
    const again = model(JSON.parse(JSON.stringify(bookOf(page).book)));
    expect(structureIn(again).reached).toEqual({ [page.getters.getSheetIds()[1]]: ["A1:B4"] });
    const [first] = again.getters.getSheetIds();
    again.dispatch("RENAME_SHEET", { sheetId: first, oldName: again.getters.getSheetName(first), newName: "Another" });
    expect(structureIn(again).reached).toBeUndefined();
  });
});
