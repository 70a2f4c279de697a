import { ask, fault, spill } from "../ask";
import { near } from "../within";

describe("one call", () => {
  it("names the argument that is missing and says what to type", () => {
    expect(fault("FILL", 6, undefined, 104)).toEqual({
      error: "#VALUE!",
      message: "height of the stack of pieces is missing: type a value such as 5 in",
    });
  });

  it("says the sample in the shop's units", () => {
    expect(fault("FILL", 150, undefined, 104, undefined, "SI").message).toBe(
      "height of the stack of pieces is missing: type a value such as 127 mm",
    );
  });

  it.each([
    ["5 furlong", "“furlong” in “5 furlong” is not a known unit: type m, mm, cm, in, ft"],
    ["5 g", "“5 g” is a weight, not a length: type it in m, mm, cm, in, ft"],
    ["five", "“five” is not a length: type a value such as 5 in"],
    [true, "“TRUE” is not a length: type a value such as 5 in"],
    ["1,5 in", "“1,5 in” has a comma, which can be read two ways: type 1.5 in with a decimal point, or leave the comma out"],
  ])("refuses %s in words", (typed, words) => {
    expect(fault("FILL", 6, typed, 104)).toEqual({ error: "#VALUE!", message: `height of the stack of pieces: ${words}` });
  });

  it("hands an error on unchanged", () => {
    const handed = { error: "#DIV/0!", message: "" } as const;
    expect(ask("FILL", 6, handed, 104)).toEqual(handed);
    expect(spill("MOISTURE", [104, handed], [93, 93])).toEqual([[expect.closeTo(0.1183, 4)], [handed]]);
  });

  it("takes one cell where one is due", () => {
    expect(fault("FILL", 6, [5, 6], 104).message).toBe("height of the stack of pieces takes one cell, not several");
  });

  it("shows nothing while nothing is filled in", () => expect(ask("FILL", "", "", "")).toBe(""));

  it("refuses more arguments than it has", () =>
    expect(fault("MOISTURE", 104, 93, 1).message).toBe("MOISTURE takes at most 2 arguments: 3 were given"));
});

describe("a column", () => {
  it("answers every row, with single cells serving all", () => {
    const answers = spill("UPTAKE", [100, 200, 300], 0.45, undefined, [0, 0.1, "12 %"]).map(([a]) => a as number);
    expect(answers).toHaveLength(3);
    near(answers[0], ask("UPTAKE", 100, 0.45) as number);
    near(answers[2], ask("UPTAKE", 300, 0.45, undefined, 0.12) as number);
  });

  it("leaves an empty row empty beside a constant, and tells a half-filled row what is missing", () => {
    expect(spill("UPTAKE", [100, "", null], 0.45).slice(1)).toEqual([[""], [""]]);
    expect(spill("MOISTURE", [104, 104], [93, ""])[1]).toEqual([
      { error: "#VALUE!", message: "oven-dry weight is missing: type a value such as 93" },
    ]);
  });

  it("takes a blank that arrives as zero for a blank where zero has no meaning", () => {
    expect(spill("MOISTURE", [104, 0], [93, 0])[1]).toEqual([""]);
    expect(fault("MOISTURE", 104, 0).message).toBe("oven-dry weight is missing: type a value such as 93");
  });

  it("takes the shop's value for a blank in a column of an argument that is a setting", () => {
    const answers = spill("DYE", [2, 2], [0.5, ""], [["dye rate", 0.125]]);
    near(answers[0][0], 1);
    near(answers[1][0], 0.25);
  });

  it("lies as its arguments lie", () => {
    const [across] = spill("MOISTURE", [[104, 100]], [[93, 93]]);
    expect(across).toHaveLength(2);
  });

  it("wants columns of one height", () => {
    expect(fault("MOISTURE", [104, 100, 98], [93, 93])).toEqual({
      error: "#VALUE!",
      message: "weight has 3 cells and oven-dry weight has 2: give columns of the same height, or one cell",
    });
  });

  it("tells a fault that serves every row in every row", () => {
    const answers = spill("UPTAKE", [100, 200], "abc").flat();
    expect(answers).toHaveLength(2);
    expect(new Set(answers.map((a) => JSON.stringify(a))).size).toBe(1);
  });
});

describe("weights", () => {
  it("go out in the unit they were typed in", () => near(ask("DRYWEIGHT", "110 g", 0.1), 100));
  it("else in what the scale reads", () => near(ask("DRYWEIGHT", 110, 0.1), 100));
});
