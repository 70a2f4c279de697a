import { model } from "../../sheet/engine";

const invalid = (typed: string, rule: object, others: Record<string, string> = {}) => {
  const made = model({
    sheets: [
      {
        id: "a",
        name: "A",
        cells: { C4: typed, ...others },
        dataValidationRules: [{ id: "1", ranges: ["C4:C9"], isBlocking: false, criterion: rule }],
      },
      { id: "w", name: "Woods", cells: { A1: "silver maple", A2: "boxelder" } },
    ],
  });
  return made.getters.getInvalidDataValidationMessage({ sheetId: "a", col: 2, row: 3 });
};

const woods = { type: "isValueInRange", values: ["Woods!A1:A2"], displayStyle: "arrow" };
const length = { type: "customFormula", values: ["=IF(ISNUMBER(C4),AND(C4>=0.01,C4<=200),ISTEXT(C4))"] };

describe("what a cell's rule says on the page", () => {
  it.each(["silver maple", "SILVER-MAPLE", "Maple, silver", "box elder"])("takes %s for a wood of the list", (typed) =>
    expect(invalid(typed, woods)).toBeUndefined(),
  );

  it.each(["elfwood", "red oak"])("warns of %s, which the list has not", (typed) => expect(invalid(typed, woods)).toBeTruthy());

  it("takes a length with its unit, and a number in range", () => {
    expect(invalid("19 mm", length)).toBeUndefined();
    expect(invalid("0.75", length)).toBeUndefined();
  });

  it("tells of a number out of range in words of the bench", () =>
    expect(invalid("900", length)).toBe("Check this: it is not what this cell is for."));
});
