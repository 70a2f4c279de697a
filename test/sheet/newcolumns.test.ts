import { model } from "../../sheet/engine";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const tabled = (headers: number) =>
  model({
    sheets: [
      {
        id: "s",
        name: "Costs",
        cells: { B2: "Wood", C2: "Column1", B3: "maple", C3: "4" },
        tables: [{ range: "B2:C3", type: "static", config: { numberOfHeaders: headers, hasFilters: false, styleId: "TableStyleMedium2" } }],
      },
    ],
  } as never);

/** The row of names once something was typed beside the table; and once more after it was undone. */
function heads(row: number, content: string, headers = 1) {
  const book = tabled(headers);
  const shown = () => [1, 2, 3].map((col) => book.getters.getEvaluatedCell({ sheetId: "s", col, row: 1 }).value);
  book.dispatch("UPDATE_CELL", { sheetId: "s", col: 3, row, content });
  const typed = [shown(), book.getters.getCoreTables("s")[0].range.zone.right] as const;
  book.dispatch("REQUEST_UNDO");
  return [typed, [shown(), book.getters.getCoreTables("s")[0].range.zone.right]];
}

describe("a table that grows because something was typed beside it", () => {
  const before = [["Wood", "Column1", null], 2];

  it("has a name for its new column that no other has, and undo takes both away", () =>
    expect(heads(2, "7")).toEqual([[["Wood", "Column1", "Column2"], 3], before]));

  it("takes the name that was typed", () => expect(heads(1, "Price")).toEqual([[["Wood", "Column1", "Price"], 3], before]));

  it("without a row of names gets none", () => expect(heads(2, "7", 0)).toEqual([[["Wood", "Column1", null], 3], before]));
});
