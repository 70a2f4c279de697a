import { evaluator, outermost } from "../../sheet/engine";

const answer = evaluator();

describe("a formula without a sheet", () => {
  it.each([
    ["=1+2", 3],
    ["1+2", 3],
    ["  = 1 + 2 ", 3],
    ['="1 1/2"""', '1 1/2"'],
    [
      "=SEQUENCE(2,3)",
      [
        [1, 2, 3],
        [4, 5, 6],
      ],
    ],
    [
      "={1,2;3,4}",
      [
        [1, 2],
        [3, 4],
      ],
    ],
    ['=XLOOKUP(2,{1;2},{"a";"b"})', "b"],
    ["=DATE(2026,1,31)", 46053],
    ["=1=1", true],
    ["=A1", 0],
  ])("%s gives %j", (formula, value) => expect(answer(formula).value).toEqual(value));

  it.each([
    ["=PORE.FILL(6,5)", "#VALUE!", /^volume of pieces and submerged ballast is missing: type a value such as 104 in³$/],
    ["=PORE.VERSION(1)", "#VALUE!", /Expected 0 maximum, but got 1/],
    ["=PORE.FILL(", "#VALUE!", /cannot be read: check its brackets, quotes and commas/],
    ["hello world", "#VALUE!", /cannot be read|Invalid/],
    ["=PORE.NOPE(1)", "#NAME?", /PORE\.NOPE/],
    ["=1E308*10", "#NUM!", /too large/],
    ["=NA()", "#N/A", /no value/],
  ])("%s is an error in words", (formula, error, words) =>
    expect(answer(formula).value).toEqual({ error, message: expect.stringMatching(words) }),
  );

  it("keeps an error inside a column in its row", () =>
    expect(answer('=PORE.MOISTURE({104;90;""},{93;93;""})').value).toEqual([
      [expect.closeTo(0.1183, 4)],
      [{ error: "#VALUE!", message: "weight is lighter than when dry: weigh again" }],
      [""],
    ]));

  it("stands alone: a large answer does not reach into the next", () => {
    expect(answer("=SEQUENCE(5000)").value).toHaveLength(5000);
    expect(answer("=SUM(A1:Z100)").value).toBe(0);
  });

  it("tells the calls that a formula made, the outermost last", () => {
    const { calls } = answer('=PORE.VOIDS(PORE.GRAVITY("silver maple"))');
    expect(calls.map(({ contract }) => contract.name)).toEqual(["GRAVITY", "VOIDS"]);
  });

  it.each([
    ["=pore.fill(6,5,104)", "PORE.FILL"],
    ["=2*PORE.FILL(6,5,104)", undefined],
    ["=PORE.FILL(", undefined],
  ])("%s is one call of %s", (formula, name) => expect(outermost(formula)).toBe(name));
});
