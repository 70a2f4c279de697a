import type * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { bookOf } from "../../sheet/book";
import { model } from "../../sheet/engine";
import { addresses } from "./addresses";

// What circles of spilling formulas say.
jest.spyOn(console, "warn").mockImplementation();

const withCells = (cells: Record<string, string>, names: Record<string, string> = {}, sheet = "Costs") =>
  model({ sheets: [{ id: "s", name: sheet, cells }], namedRanges: names });

const cellsOf = (book: engine.WorkbookData) => book.sheets[0].cells;

describe("the book of a model", () => {
  it("is what the engine's own export holds", () => {
    const made = withCells({ A1: "1", B1: "=A1*2", C1: "'3/4" }, { prices: "Costs!A1:A3" });
    made.dispatch("SET_FORMATTING", {
      sheetId: "s",
      target: [{ left: 0, right: 1, top: 0, bottom: 3 }],
      style: { bold: true },
      format: "0.00",
    });
    const { revisionId: _, ...own } = (made as unknown as { _exportData(squeezed: boolean): engine.WorkbookData })._exportData(false);
    const { book, faults } = bookOf(made);
    expect(book).toEqual({ ...own, revisionId: "START_REVISION" });
    expect(faults).toEqual([]);
  });

  it("keeps both ends of a running total, at which the engine's own export fails or forgets one", () => {
    const cells = { B3: "=SUM(K$3:K3)", B4: "=SUM(K$3:K4)", B5: "=SUM($K3:K3)+Costs!K$3:K$3" };
    const { book } = bookOf(withCells(cells));
    expect(cellsOf(book)).toEqual(cells);
    expect(cellsOf(bookOf(model(book)).book)).toEqual(cells);
  });

  it.each(["constructor", "__proto__", "toString", "hasOwnProperty", "valueOf"])("holds a range and a sheet called %s", (name) => {
    const made = model({
      sheets: [
        { id: "s", name, cells: { A1: "7" } },
        { id: "t", name: "Sums", cells: { A1: `='${name}'!A1+1`, A2: `=${name}+1` } },
      ],
      namedRanges: Object.fromEntries([[name, "Sums!A1"]]),
    });
    const again = model(bookOf(made).book);
    expect(again.getters.getNamedRanges().map((one) => one.name)).toEqual([name]);
    expect([0, 1].map((row) => again.getters.getEvaluatedCell({ sheetId: "t", col: 0, row }).value)).toEqual([8, 9]);
    expect(again.getters.getSheetName("s")).toBe(name);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  it("names a formula that cannot be written down, with its cell, and keeps everything else", () => {
    const made = withCells({ A1: "2", B2: "=A1*3", C3: "=A1*4" });
    const cell = made.getters.getCell({ sheetId: "s", ...addresses("B2") }) as engine.FormulaCell;
    cell.compiledFormula.toFormulaString = () => {
      throw new Error("no such token");
    };
    const { book, faults } = bookOf(made);
    expect(faults).toEqual([{ what: "Costs!B2", why: "no such token" }]);
    expect(cellsOf(book)).toEqual({ A1: "2", B2: "6", C3: "=A1*4" });
  });

  it("names what of the looks cannot be given, and keeps everything else", () => {
    const made = withCells({ A1: "2" });
    const { corePlugins } = made as unknown as { corePlugins: { constructor: { getters: string[] }; export: () => void }[] };
    corePlugins.find((plugin) => plugin.constructor.getters?.includes("getConditionalFormats"))!.export = () => {
      throw new Error("no such rule");
    };
    const { book, faults } = bookOf(made);
    expect(faults).toEqual([{ what: "conditional colors", why: "no such rule" }]);
    expect(cellsOf(bookOf(model(book)).book)).toEqual({ A1: "2" });
  });
});

describe("random sheets of formulas", () => {
  const column = fc.constantFrom("A", "B", "C", "K");
  const line = fc.integer({ min: 1, max: 12 });
  const dollar = fc.constantFrom("", "$");
  const reference = fc.tuple(dollar, column, dollar, line).map((all) => all.join(""));
  const range = fc.tuple(reference, reference).map(([a, b]) => `${a}:${b}`);
  const operand = fc.oneof(
    reference,
    fc.constantFrom(
      "constructor",
      "prices",
      "'It’s so'!B2",
      "'It’s so'!B$2:B2",
      "Costs!A1",
      "K:K",
      "3:3",
      '"a ""b"',
      "TRUE",
      "#REF",
      "{1,2}",
      "NOPE(1)",
    ),
    fc.integer({ min: 0, max: 999 }).map(String),
    fc.tuple(fc.constantFrom("SUM", "COUNT", "PORE.DYE", "IFERROR"), fc.oneof(range, reference)).map(([name, arg]) => `${name}(${arg})`),
  );
  const formula = fc.array(fc.tuple(fc.constantFrom("+", "*", "&", "^", "-", "=", "<>"), operand), { minLength: 1, maxLength: 4 });
  const written = formula.map((all) => `=${all.map(([sign, text], i) => (i ? sign : "") + text).join("")}`);
  const content = fc.oneof({ weight: 4, arbitrary: written }, { weight: 1, arbitrary: fc.string({ maxLength: 12 }) });
  const sheet = fc.array(fc.tuple(column, line, content), { minLength: 1, maxLength: 14 });

  it("2,000 of them are kept and opened again with every text as it was", () => {
    // Twenty sheets make one workbook: a workbook takes longer to make than a sheet.
    const workbook = fc.array(sheet, { minLength: 20, maxLength: 20 });
    const texts = ({ getters }: engine.Model) =>
      getters.getSheetIds().flatMap((id) =>
        getters
          .getCells(id)
          .map((cell) => getters.getCellPosition(cell.id))
          .map((at) => `${id} ${at.col} ${at.row} ${getters.getCellText(at, { showFormula: true })}`)
          .sort(),
      );
    fc.assert(
      fc.property(workbook, (sheets) => {
        const made = model({
          sheets: [
            ...sheets.map((cells, i) => ({
              id: `s${i}`,
              name: i ? `Costs ${i}` : "Costs",
              cells: Object.fromEntries(cells.map(([letter, row, text]) => [letter + row, text])),
            })),
            { id: "t", name: "It’s so", cells: { B2: "4" } },
          ],
          namedRanges: { prices: "Costs!A1:A3", constructor: "Costs!B1" },
        });
        const { book, faults } = bookOf(made);
        expect(faults).toEqual([]);
        const again = model(structuredClone(book));
        expect(texts(again)).toEqual(texts(made));
        expect(bookOf(again).book).toEqual(book);
      }),
      { numRuns: 100 },
    );
  });
});
