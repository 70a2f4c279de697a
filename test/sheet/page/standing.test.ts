import { standingWords } from "../../../sheet/page/standing";

const standing = { id: "a", name: "Loads", moment: new Date(2026, 2, 14, 9, 5).getTime() };

/** Five past nine, by whichever clock the machine's language has. */
const at = (words: string) => expect.stringMatching(new RegExp(`^saved (9:05 AM|0?9:05)${words}$`));

describe("how keeping stands", () => {
  it.each([
    [{ state: "kept" }, at("")],
    [{ state: "kept", missing: [] }, at("")],
    [{ state: "kept", missing: ["Costs!B3"] }, at(", but not the formula in Costs!B3 \\(the value is saved instead\\)")],
    [
      { state: "kept", missing: ["A!B3", "A!B4", "charts"] },
      at(", but not the formulas in A!B3, A!B4 \\(the value is saved instead\\); charts"),
    ],
    [{ state: "full" }, expect.stringContaining("no room left")],
    [{ state: "failed" }, expect.stringContaining("does not let this page keep anything")],
    [{ state: "stuck", why: "colFixed" }, expect.stringMatching(/^not saved: the spreadsheet on this page .*\(colFixed\)/)],
  ] as const)("%j: %s", (change, words) => expect(standingWords({ ...standing, ...change } as never)).toEqual(words));

  it("never puts on the browser what the engine did", () =>
    expect(standingWords({ ...standing, state: "stuck", why: "x" })).not.toContain("browser"));
});
