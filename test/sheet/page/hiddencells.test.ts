import type { Model } from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { reachHidden } from "../../../sheet/page/hiddencells";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

/** A sheet whose second column and fourth row are hidden. */
function hiding(): Model {
  const book = model({ sheets: [{ id: "s", name: "Costs", cells: { A1: "head", B4: "hidden" } }] });
  book.dispatch("HIDE_COLUMNS_ROWS", { sheetId: "s", dimension: "COL", elements: [1] });
  book.dispatch("HIDE_COLUMNS_ROWS", { sheetId: "s", dimension: "ROW", elements: [3] });
  return book;
}

/** Chooses a cell, as the name box and a jump do, and types into the one that is chosen then. */
function typedInto(book: Model, column: number, row: number): readonly string[] {
  book.selection.selectCell(column, row);
  book.dispatch("UPDATE_CELL", { ...book.getters.getActivePosition(), content: "typed" });
  return [
    [0, 0],
    [column, row],
  ].map(([col, down]) => String(book.getters.getEvaluatedCell({ sheetId: "s", col, row: down }).value ?? ""));
}

describe("a cell in a hidden row or column", () => {
  it.each([
    ["column", 1, 8],
    ["row", 5, 3],
    ["row and column", 1, 3],
  ])("in a hidden %s is chosen when it is asked for, and takes what is typed", (_, column, row) => {
    const book = hiding();
    reachHidden(book);
    expect(typedInto(book, column, row)).toEqual(["head", "typed"]);
  });

  it("outside the sheet is not", () => {
    const book = hiding();
    reachHidden(book);
    book.selection.selectCell(2, 2);
    book.selection.selectCell(900, 900);
    expect(book.getters.getActivePosition()).toEqual({ sheetId: "s", col: 2, row: 2 });
  });
});
