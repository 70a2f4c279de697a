import { type Move, movedFormula } from "../../../shared/xlsx/move";

const rows = (at: number, by: number): Move => ({ kind: "lines", sheet: "S1", axis: "row", at, by });
const columns = (at: number, by: number): Move => ({ kind: "lines", sheet: "S1", axis: "column", at, by });
const formula = `SUM(A1:B5,$A$3,A:A,3:5,'S1'!A10,S2!A10,[1]S1!A9,A3:A4,"A9",T[x],LOG10(A9))`;

// As Excel moves references: ECMA-376 has no rule for it; common practice of spreadsheet programs, from memory.
describe("a formula's references", () => {
  it.each<[string, Move, string]>([
    ["a row put in", rows(2, 1), `SUM(A1:B6,$A$4,A:A,4:6,'S1'!A11,S2!A10,[1]S1!A9,A4:A5,"A9",T[x],LOG10(A10))`],
    ["rows taken out", rows(2, -2), `SUM(A1:B3,#REF!,A:A,3:3,'S1'!A8,S2!A10,[1]S1!A9,#REF!,"A9",T[x],LOG10(A7))`],
    ["a column put in", columns(0, 1), `SUM(B1:C5,$B$3,B:B,3:5,'S1'!B10,S2!A10,[1]S1!A9,B3:B4,"A9",T[x],LOG10(B9))`],
    ["a sheet taken out", { kind: "gone", sheet: "S2" }, formula.replace("S2!A10", "#REF!")],
    ["a sheet's new name", { kind: "names", sheets: new Map([["s2", "It's new"]]) }, formula.replace("S2!", "'It''s new'!")],
    [
      "a cell put elsewhere",
      { kind: "block", sheet: "S1", block: { top: 8, left: 0, bottom: 8, right: 0 }, to: { sheet: "S1", row: 0, column: 3 } },
      formula.replace("LOG10(A9)", "LOG10(D1)"),
    ],
  ])("after %s", (_, move, expected) => expect(movedFormula(formula, "S1", move).formula).toBe(expected));

  it("tells where a reference got other cells than it had", () => {
    expect(movedFormula("SUM(A1:A5)", "S1", rows(2, 1)).resized).toBe(true);
    expect(movedFormula("SUM(A4:A5)", "S1", rows(2, 1)).resized).toBe(false);
  });
});
