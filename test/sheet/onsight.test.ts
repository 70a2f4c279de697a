import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { model } from "../../sheet/engine";
import { quietly } from "../../sheet/quietly";

/** The engine as its makers hand it out: it calculates every sheet at once, and compiles every formula while it opens. */
let plain: typeof import("@odoo/o-spreadsheet");
jest.isolateModules(() => {
  plain = require("@odoo/o-spreadsheet");
});

const names = ["One", "Two", "Three's"];
const columns = "ABCD";
const rows = 6;
const sheetOf = (index: number) => `s${index}`;

const quoted = (sheet: number) => `'${names[sheet].replace("'", "''")}'!`;
const place = fc.record({ sheet: fc.nat(2), column: fc.nat(3), row: fc.nat(rows - 1) });

/** What a cell of a column may hold: formulas read columns before it alone, since circles end differently each time. */
function textsIn(column: number): fc.Arbitrary<string> {
  const number = fc.integer({ min: 0, max: 3 }).map(String);
  if (!column) return number;
  const before = fc.record({ sheet: fc.nat(2), column: fc.nat(column - 1), row: fc.nat(rows - 1) });
  const reference = before.map((at) => `${quoted(at.sheet)}${columns[at.column]}${at.row + 1}`);
  const area = fc
    .tuple(before, fc.nat(1), fc.nat(2))
    .map(
      ([at, wide, high]) =>
        `${quoted(at.sheet)}${columns[at.column]}${at.row + 1}:${columns[Math.min(column - 1, at.column + wide)]}${at.row + 1 + high}`,
    );
  return fc.oneof(
    number,
    reference.map((at) => `=${at}+1`),
    fc.tuple(reference, reference).map(([a, b]) => `=IF(${a}>${b},${a},"less")`),
    area.map((at) => `=SUM(${at})`),
    area.map((at) => `=COUNTA(${at})`),
    // These fill more than their own cell.
    area.map((at) => `=TRANSPOSE(${at})`),
    area.map((at) => `=${at}*2`),
    reference.map((at) => `=SEQUENCE(1+MOD(N(${at}),3))`),
  );
}
const entry = place.chain((at) => textsIn(at.column).map((content) => ({ at, content })));
const book = fc.array(entry, { minLength: 4, maxLength: 24 }).map((entries) => ({
  sheets: names.map((name, index) => ({
    id: sheetOf(index),
    name,
    colNumber: 12,
    rowNumber: 14,
    cells: Object.fromEntries(
      entries.filter(({ at }) => at.sheet === index).map(({ at, content }) => [`${columns[at.column]}${at.row + 1}`, content]),
    ),
  })),
}));
const step = fc.oneof(
  fc.nat(2).map((sheet) => ({ kind: "look", sheet }) as const),
  entry.map((typed) => ({ kind: "type", ...typed }) as const),
  fc.tuple(fc.nat(2), fc.nat(rows - 1)).map(([sheet, row]) => ({ kind: "row", sheet, row }) as const),
  fc.nat(2).map((sheet) => ({ kind: "rename", sheet }) as const),
  fc.constant({ kind: "undo" } as const),
);
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

function take(workbook: engine.Model, one: Step): void {
  const { dispatch, getters } = workbook;
  if (one.kind === "look") getters.getEvaluatedCells(sheetOf(one.sheet));
  if (one.kind === "type")
    dispatch("UPDATE_CELL", { sheetId: sheetOf(one.at.sheet), col: one.at.column, row: one.at.row, content: one.content });
  if (one.kind === "row") {
    const sheetId = sheetOf(one.sheet);
    const sheetName = getters.getSheetName(sheetId);
    dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName, dimension: "ROW", base: one.row, position: "before", quantity: 1 });
  }
  if (one.kind === "rename") {
    const sheetId = sheetOf(one.sheet);
    const oldName = getters.getSheetName(sheetId);
    dispatch("RENAME_SHEET", { sheetId, oldName, newName: `${oldName}x` });
  }
  if (one.kind === "undo") dispatch("REQUEST_UNDO");
}

function all({ getters }: engine.Model): unknown[] {
  return getters.getSheetIds().map((sheetId) =>
    Array.from({ length: 12 * 14 }, (_, index) => {
      const position = { sheetId, col: index % 12, row: Math.floor(index / 12) };
      const cell = getters.getCell(position);
      const { value } = getters.getEvaluatedCell(position);
      return [cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : cell?.content, value];
    }),
  );
}

describe("a workbook that is calculated where it is looked at", () => {
  it("calculates a sheet when one of its cells is asked for, and what another sheet needs of it before", () => {
    const asked: string[] = [];
    engine.registries.functionRegistry.add("ASKED", {
      description: "Tells that it was calculated",
      args: [engine.helpers.arg("name (string)", "who")],
      compute: (name: unknown) => {
        asked.push(String((name as { value: unknown }).value));
        return { value: 1 };
      },
    } as never);
    const cells = [
      { A1: "=Two!A1+1", A2: '=ASKED("first")' },
      { A1: '=ASKED("needed")', A2: '=ASKED("second")' },
      { A1: '=ASKED("third")' },
    ];
    const { getters } = model({
      sheets: cells.map((own, index) => ({ id: sheetOf(index), name: ["One", "Two", "Three"][index], cells: own })),
    });
    expect(asked).toEqual([]);
    expect(getters.getEvaluatedCell({ sheetId: "s0", col: 0, row: 0 }).value).toBe(2);
    expect(asked).toEqual(["needed", "first"]);
    getters.getEvaluatedCells("s1");
    expect(asked).toEqual(["needed", "first", "second"]);
  });

  it("shows and holds what one that is calculated at once does, whatever is done to it", () => {
    fc.assert(
      fc.property(book, fc.array(step, { maxLength: 8 }), (data, steps) => {
        const [late, early] = quietly(() => [model(structuredClone(data)), new plain.Model(structuredClone(data))]);
        quietly(() => {
          for (const one of steps) {
            for (const workbook of [late, early]) take(workbook, one);
            // Which of two formulas that fill the same cells comes first is nobody's promise.
            fc.pre(!JSON.stringify(all(early)).includes("#SPILL!"));
          }
        });
        expect(quietly(() => all(late))).toEqual(quietly(() => all(early)));
      }),
      { numRuns: 150 },
    );
  });
});
