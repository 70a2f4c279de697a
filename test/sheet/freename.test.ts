import { freeName } from "../../sheet/freename";

const free = (name: string, taken: readonly string[], longest = 31) => freeName(name, (one) => taken.includes(one), longest);

describe("a name that is free", () => {
  it.each([
    { name: "Blanks", taken: [], is: "Blanks" },
    { name: "Blanks", taken: ["Blanks"], is: "Blanks 2" },
    { name: "Blanks", taken: ["Blanks", "Blanks 2", "Blanks 3"], is: "Blanks 4" },
    { name: "Blanks 2", taken: ["Blanks 2"], is: "Blanks 2 2" },
  ])("of $name beside $taken is $is", ({ name, taken, is }) => expect(free(name, taken)).toBe(is));

  it("is no longer than allowed, its number included", () => {
    const long = "x".repeat(31);
    expect(free(long, [long])).toBe(`${"x".repeat(29)} 2`);
  });

  it("cuts no letter of two halves in two", () => {
    const long = `${"x".repeat(28)}\u{1F332}x`;
    expect(free(long, [long])).toBe(`${"x".repeat(28)} 2`);
  });
});
