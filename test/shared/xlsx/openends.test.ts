import { withEnds, withoutEnds } from "../../../shared/xlsx/openends";

describe("a range without an end", () => {
  it.each([
    ["=SUM(B:B)", "=SUM(B$1:B$1048576)", "=SUM(B:B)"],
    ["=SUM($2:3)", "=SUM($A$2:$XFD3)", "=SUM($2:3)"],
    ["=SUM('a:b'!$B2:$C)", "=SUM('a:b'!$B2:$C1048576)", "=SUM('a:b'!$B2:$C1048576)"],
    ["=SUM(S!B2:3)", "=SUM(S!B2:XFD3)", "=SUM(S!B2:XFD3)"],
    ['="A:A"&A1:B2', '="A:A"&A1:B2', '="A:A"&A1:B2'],
  ])("of %s reaches as far as a sheet can, whatever the sheet holds today", (typed, ended, filed) => {
    expect(withEnds(typed)).toBe(ended);
    expect(withoutEnds(ended)).toBe(filed);
  });
});
