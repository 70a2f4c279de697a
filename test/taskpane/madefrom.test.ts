import { cellsIn } from "../../taskpane/madefrom";

describe("the cells that a formula is put together from", () => {
  it.each([
    ['=IF(ISNUMBER(AC12),"about "&TEXT(AC12,"0")&" min, not B7",AD12)', ["Blanks!AC12", "Blanks!AD12"]],
    ["=$P$12*B12", ["Blanks!P12", "Blanks!B12"]],
    ["='My Shop'!B5+Loads!A1+'Joe''s'!C3", ["'My Shop'!B5", "Loads!A1", "'Joe''s'!C3"]],
    ["=SUM(A1:A9)+LOG10(7)+rate2", []],
    ["", []],
  ])("%s: %j", (formula, cells) => expect(cellsIn(formula, "Blanks!V12")).toEqual(cells));

  it("asks for no more than six", () => {
    expect(cellsIn("=A1+A2+A3+A4+A5+A6+A7+A8", "Blanks!V12")).toHaveLength(6);
  });
});
