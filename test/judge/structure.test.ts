import "../sheet/file/dom";
import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { model } from "../../sheet/engine";
import { opened } from "../../sheet/file/open";
import { saved } from "../../sheet/file/save";
import { held } from "../sheet/file/held";
import { rich } from "../sheet/file/rich";
import { chartFile, figures } from "./charts";
import { schemaErrors } from "./schemaerrors";

for (const name of ["debug", "group", "groupEnd", "warn"] as const) jest.spyOn(console, name).mockImplementation();

type Book = ReturnType<typeof model>;
type Step = readonly [type: string, payload: (book: Book, sheetId: string) => object];

const line = fc.nat({ max: 16 });
const column = fc.nat({ max: 6 });
const names = ["Other one", "New!", "It’s", "2024", "x.y", "__proto__", "constructor", "A1"];
let number = 0;

const steps: fc.Arbitrary<Step> = fc.oneof(
  fc
    .tuple(fc.constantFrom("ROW", "COL"), column, fc.integer({ min: 1, max: 3 }))
    .map(([dimension, base, quantity]): Step => ["ADD_COLUMNS_ROWS", () => ({ dimension, base, quantity, position: "before" })]),
  line.map((at): Step => ["REMOVE_COLUMNS_ROWS", () => ({ dimension: "ROW", elements: [at] })]),
  column.map((at): Step => ["REMOVE_COLUMNS_ROWS", () => ({ dimension: "COL", elements: [at] })]),
  fc
    .tuple(line, column, line, column)
    .map(
      ([top, left, row, col]): Step => [
        "MOVE_RANGES",
        (_, sheetId) => ({ target: [{ top, left, bottom: top + 1, right: left + 1 }], targetSheetId: sheetId, row, col }),
      ],
    ),
  fc
    .constantFrom(...names)
    .map((newName): Step => ["RENAME_SHEET", (book, sheetId) => ({ oldName: book.getters.getSheetName(sheetId), newName })]),
  fc.constantFrom(-1, 1).map((delta): Step => ["MOVE_SHEET", () => ({ delta })]),
  fc.constant<Step>(["DELETE_SHEET", () => ({})]),
  fc.constant<Step>(["DUPLICATE_SHEET", () => ({ sheetIdTo: `copy${number}`, sheetNameTo: `Copy ${number++}` })]),
  fc.constant<Step>(["CREATE_SHEET", () => ({ sheetId: `made${number}`, name: `Made ${number++}`, position: 0 })]),
);

/** What stands in the cells of each sheet, by names and places: two workbooks can be compared by it. */
function contents({ getters }: Book): Record<string, Record<string, string>> {
  const sheets = getters.getSheetIds().map((sheetId) => {
    const cells = getters.getCells(sheetId).flatMap((cell) => {
      const { col, row } = getters.getCellPosition(cell.id);
      const text = cell.isFormula ? cell.compiledFormula.toFormulaString(getters) : cell.content;
      // Ids of sheets are made anew; a column that comes into a table is named when it is saved.
      const said = text.replace(/^\[(.*)\]\(o-spreadsheet:[^)]*\)$/, "$1").replace(/#REF!?/g, "#REF!");
      return !said || /^Column\d+$/.test(said) ? [] : [[`${col} ${row}`, said]];
    });
    return [getters.getSheetName(sheetId), Object.fromEntries(cells)];
  });
  return Object.fromEntries(sheets);
}

const files: Record<string, Uint8Array> = { "as it came": rich };

describe("a file whose rows, columns and sheets were moved about", () => {
  it("opens again as it stood on the page", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(steps, fc.nat()), { minLength: 1, maxLength: 4 }), async (list) => {
        const workbook = opened(rich, engine);
        const book = model(workbook.book);
        const done = list.flatMap(([[type, payload], sheet]) => {
          const ids = book.getters.getSheetIds();
          const sheetId = ids[sheet % ids.length];
          const given = { sheetId, sheetName: book.getters.getSheetName(sheetId), ...payload(book, sheetId) };
          return book.dispatch(type as never, given as never).isSuccessful ? [type] : [];
        });
        const file = await saved(book, workbook, engine);
        files[`${Object.keys(files).length} ${done.join(" ")}`] = file;
        expect(contents(model(opened(file, engine).book))).toEqual(contents(book));
      }),
      { numRuns: 16 },
    );
  });
});

it("charts of every kind that the page makes are saved each in its place", async () => {
  files.charts = await chartFile();
  const { charts } = held(files.charts).sheets.Charts as { charts: { from: string; chart: string }[] };
  expect(charts.map(({ from }) => from.split(" ")[2])).toEqual(figures.map(({ row }) => String(row)));
  expect(charts.map(({ chart }) => /(?:pie|doughnut)Chart/.exec(chart)?.[0]).filter(Boolean)).toEqual(["pieChart", "doughnutChart"]);
});

it("all of them keep to the schemas of the Open XML SDK", () => {
  const errors = schemaErrors(files);
  expect(errors).toEqual(Object.fromEntries(Object.keys(files).map((name) => [name, []])));
  expect(errors).toHaveProperty("charts");
  expect(Object.keys(errors).length).toBeGreaterThan(10);
});
