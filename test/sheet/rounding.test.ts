import { evaluator } from "../../sheet/engine";

const answer = evaluator();

describe("rounding", () => {
  it.each([
    ["ROUND(2.675,2)", 2.68],
    ["ROUND(1.005,2)", 1.01],
    ["ROUND(-2.5,0)", -3],
    ["ROUND(1250,-2)", 1300],
    ["ROUND(0,2)", 0],
    ["ROUND(0.0000001,2)", 0],
    ["ROUND(1E+21,2)", 1e21],
    ["ROUND(1.5,400)", 1.5],
    ["ROUND(1.5,-400)", 0],
    ["ROUNDUP(0.1*3*10,0)", 3],
    ["ROUNDDOWN(0.29*100,0)", 29],
  ])("%s is %d, as other programs have it", (formula, due) => expect(answer(formula).value).toBe(due));

  it("goes down a column, and refuses a word", () => {
    expect(answer("ROUND({1.005;2.675},2)").value).toEqual([[1.01], [2.68]]);
    expect(answer('ROUND("much",2)').value).toMatchObject({ error: "#VALUE!" });
  });
});
