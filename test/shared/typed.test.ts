import { hasComma, readTyped } from "../../shared/typed";

describe("numbers as typed", () => {
  it.each([
    ["19 mm", 19, "mm"],
    ["3/4 in", 0.75, "in"],
    ['1 1/2"', 1.5, '"'],
    ["1-1/2 in", 1.5, "in"],
    ["0.75in", 0.75, "in"],
    [".75 in", 0.75, "in"],
    ["¾ in", 0.75, "in"],
    ["1½ in", 1.5, "in"],
    ["-29 inHg", -29, "inHg"],
    ["−29 inHg", -29, "inHg"],
    ["95 °C", 95, "°C"],
    ["12 %", 12, "%"],
    ["1e3 g", 1000, "g"],
    ["42", 42, ""],
  ])("%s is %d and “%s”", (typed, number, rest) => expect(readTyped(typed)).toEqual({ number, rest }));

  it.each(["", "in", "three", "--3", "$5"])("“%s” is no number", (typed) => expect(readTyped(typed)).toBeUndefined());

  it.each(["1,5 L", "1,000 g", ",5"])("“%s” has a comma that can be read two ways", (typed) => expect(hasComma(typed)).toBe(true));
});
