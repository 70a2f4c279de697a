import { type Move, movedFormula, withinSheet, withoutReferences } from "../../../shared/xlsx/move";

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

  it("to whole rows stay whole where a cell is put elsewhere", () => {
    const move: Move = {
      kind: "block",
      sheet: "S1",
      block: { top: 8, left: 0, bottom: 8, right: 0 },
      to: { sheet: "S1", row: 0, column: 3 },
    };
    expect(movedFormula("SUM(S1!$1:$3,B:B)", "S1", move).formula).toBe("SUM(S1!$1:$3,B:B)");
  });

  it("to a sheet whose name has signs of print stand in quotes", () =>
    expect(movedFormula("S2!A1+SUM(S2!A1:S2!B2)", "S1", { kind: "names", sheets: new Map([["s2", "It’s"]]) }).formula).toBe(
      "'It’s'!A1+SUM('It’s'!A1:'It’s'!B2)",
    ));

  it("past the last row are none, and two formulas are the same but for where they lead", () => {
    expect(withinSheet("=A1048577+LOG10(B2)")).toBe("=#REF!+LOG10(B2)");
    expect(withoutReferences("=SUM(A5:#REF!)+#REF")).toBe(withoutReferences("=SUM(B1:B2)+C3"));
    expect(withoutReferences("=A1+1")).not.toBe(withoutReferences("=A1+2"));
  });
});
