import { evaluator, model } from "../../sheet/engine";
import { allowance, budgeted } from "../../sheet/guard";
import { calculateAll } from "../../sheet/onsight";

const evaluate = evaluator();

describe("a formula that would fill more than a million cells", () => {
  it.each([
    "SEQUENCE(10000,10000)",
    "SEQUENCE(1e15)",
    "RANDARRAY(1e9,1)",
    "MUNIT(1e5)",
    "EXPAND(1,1e9,1e9)",
    "WRAPROWS(SEQUENCE(9),1e12)",
    "WRAPCOLS(SEQUENCE(9),1e12)",
    "OFFSET(A1,0,0,1e9,1e9)",
    "MMULT(SEQUENCE(2000),SEQUENCE(1,2000))",
    "SEQUENCE(2000)+SEQUENCE(1,2000)",
    "IF(SEQUENCE(2000)>SEQUENCE(1,2000),1,2)",
    "HSTACK(SEQUENCE(1,2000),SEQUENCE(2000))",
    "SUM(SEQUENCE(1e9))",
  ])("%s is refused before it is made", (formula) =>
    expect(evaluate(formula).value).toEqual({ error: "#NUM!", message: expect.stringContaining("million cells") }),
  );

  it("is told from one that only reads many", () => {
    expect(evaluate("SUM(SEQUENCE(1000,1000))").value).toBe(500000500000);
    expect(evaluate("SUM(A1:XFD1048576)").value).toBe(0);
  });
});

describe("the formulas of a workbook that opens", () => {
  const column = (formula: (row: number) => string, rows: number) =>
    Object.fromEntries(Array.from({ length: rows }, (_, i) => [`B${i + 1}`, formula(i + 1)]));
  const opens = (cells: object) =>
    budgeted(() => {
      const opened = model({ sheets: [{ id: "s", name: "S", cells }] });
      calculateAll(opened);
      return opened;
    });
  const told = (cells: object) => opens(cells).over;

  it("may do what a shop's do", () => expect(told(column((row) => `=SUM(A$1:A${row})+SUM(SEQUENCE(100))`, 300))).toBe(false));

  it("are stopped when their results together are too many", () => {
    const results = jest.replaceProperty(allowance, "results", 5_000);
    const { result, over } = opens(column((row) => `=SUM(SEQUENCE(900))+${row}`, 12));
    results.restore();
    expect(over).toBe(true);
    expect(result.getters.getEvaluatedCell({ sheetId: "s", col: 1, row: 0 }).value).toBe(405451);
    expect(result.getters.getEvaluatedCell({ sheetId: "s", col: 1, row: 11 })).toMatchObject({ value: "#NUM!", message: /too long/ });
  });

  it("are stopped when their time is over", () => {
    const clock = jest.spyOn(performance, "now");
    let now = 0;
    clock.mockImplementation(() => (now += allowance.milliseconds / 50));
    const over = told(column((row) => `=SUM(A1:B${row + 500}1)`, 200));
    clock.mockRestore();
    expect(over).toBe(true);
  });
});
