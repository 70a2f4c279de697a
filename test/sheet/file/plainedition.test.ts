import { letters } from "../../../shared/xlsx/letters";
import { model } from "../../../sheet/engine";
import { openedHere } from "../../../sheet/headless";
import { plainEdition } from "../../../src/workbook/sharing/plainedition";
import { workbooks } from "../../../tool/workbook";

jest.setTimeout(120_000);
for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

type Book = ReturnType<typeof model>;

/** What a sheet shows, by the words of its headings and the row. */
function columnOf({ getters }: Book, sheet: string, heading: string): (string | number | boolean | null)[] {
  const sheetId = getters.getSheetIds().find((id) => getters.getSheetName(id) === sheet)!;
  const { numberOfRows, numberOfCols } = getters.getSheetSize(sheetId);
  const value = (col: number, row: number) => getters.getEvaluatedCell({ sheetId, col, row }).value;
  for (let row = 0; row < numberOfRows; row++)
    for (let col = 0; col < numberOfCols; col++)
      if (value(col, row) === heading) return Array.from({ length: 12 }, (_, i) => value(col, row + 1 + i));
  throw new Error(`${sheet} has no heading ${heading}: ${letters(numberOfCols)}`);
}

describe("a workbook for people without the add-in", () => {
  let live: Book;
  let plain: Book;
  let made: ReturnType<typeof plainEdition>;

  beforeAll(async () => {
    const file = (await workbooks("US", "demo", ["live"])).get("live")!;
    made = plainEdition(file);
    live = model(openedHere(file).book);
    plain = model(openedHere(made.file).book);
  });

  it("calls no function of ours any more", () => {
    for (const id of plain.getters.getSheetIds())
      for (const cell of plain.getters.getCells(id))
        if (cell.isFormula) expect(cell.compiledFormula.normalizedFormula).not.toMatch(/PORE/i);
    expect(made.calculates).toBeGreaterThan(60);
    expect(made.words).toMatch(/^\d+ formulas still calculate; \d+ PORE cells are their values/);
  });

  it.each(["moisture", "voids", "resin, each"])("works out %s on Blanks as the functions do", (heading) => {
    const [ours, theirs] = [columnOf(live, "Blanks", heading), columnOf(plain, "Blanks", heading)];
    const numbers = ours.flatMap((value, i) => (typeof value === "number" ? [[value, theirs[i]]] : []));
    expect(numbers.length).toBeGreaterThan(5);
    for (const [value, other] of numbers) expect(Math.abs(Number(other) / Number(value) - 1)).toBeLessThan(1e-6);
  });

  it.each(["min", "shortest", "longest"])(
    "takes the minutes in the oven from a table, never less and at most a quarter more: %s",
    (heading) => {
      const [ours, theirs] = [columnOf(live, "Blanks", heading), columnOf(plain, "Blanks", heading)];
      const ratios = ours.flatMap((value, i) => (typeof value === "number" ? [Number(theirs[i]) / value] : []));
      expect(ratios.length).toBeGreaterThan(5);
      for (const ratio of ratios) {
        expect(ratio).toBeGreaterThanOrEqual(0.999);
        expect(ratio).toBeLessThan(1.25);
      }
    },
  );

  it("shows what is fixed in gray, and nothing that calculates", () => {
    const grays: string[] = [];
    for (const id of plain.getters.getSheetIds())
      for (const { id: cell, isFormula } of plain.getters.getCells(id)) {
        const { row, col } = plain.getters.getCellPosition(cell);
        if (plain.getters.getCellStyle({ sheetId: id, row, col })?.fillColor?.toUpperCase() !== "#E8ECEF") continue;
        grays.push(plain.getters.getSheetName(id));
        expect(isFormula).toBe(false);
      }
    expect(grays.filter((name) => name === "Loads").length).toBeGreaterThan(20);
    expect(made.words).toMatch(/; fixed values are gray$/);
  });

  it("follows a size that is changed", () => {
    const { getters } = plain;
    const sheetId = getters.getSheetIds().find((id) => getters.getSheetName(id) === "Blanks")!;
    const minutes = () => ["min", "shortest", "longest"].map((heading) => columnOf(plain, "Blanks", heading)[0] as number);
    const before = minutes();
    const { numberOfRows } = getters.getSheetSize(sheetId);
    const row =
      Array.from({ length: numberOfRows }, (_, i) => i).find(
        (i) => getters.getEvaluatedCell({ sheetId, col: 2, row: i }).value === "thickness",
      )! + 1;
    for (const col of [2, 3]) plain.dispatch("UPDATE_CELL", { sheetId, col, row, content: "1.5" });
    const [about, short, long] = minutes();
    for (const [i, after] of [about, short, long].entries()) expect(after).toBeGreaterThan(before[i] * 1.2);
    expect(columnOf(plain, "Blanks", "bake")[0]).toBe(`about ${about} min, likely ${short} to ${long}`);
  });
});
