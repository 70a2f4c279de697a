import { ask, fault, spill } from "../../ask";
import { within } from "../../within";

describe("MOISTURE", () => {
  it.each([
    { wet: 1150, dry: 1000, is: 0.15, off: 5e-5, from: "Wood Handbook, FPL-GTR-282 (2021), eq. 4-2, table value read in a transcription" },
    { wet: 2000, dry: 1000, is: 1, off: 5e-5, from: "the same" },
    { wet: 1000, dry: 1000, is: 0, off: 5e-5, from: "the same" },
    { wet: 247, dry: 183, is: 0.3497, off: 5e-5, from: "a worked example in a woodworkers' forum, exact 0.3497268" },
  ])("$wet over $dry is $is ($from)", ({ wet, dry, is, off }) => within(ask("MOISTURE", wet, dry), is, off));

  it("says so when the piece is lighter than when dry", () => {
    expect(fault("MOISTURE", 90, 93)).toEqual({ error: "#VALUE!", message: "weight is lighter than when dry: weigh again" });
  });

  it("keeps a bad row in its row and leaves an empty row empty", () => {
    expect(spill("MOISTURE", [104, "", "abc"], [93, "", 93])).toEqual([
      [expect.closeTo(0.11828, 5)],
      [""],
      [{ error: "#VALUE!", message: "weight: “abc” is not a weight: type a value such as 104 oz" }],
    ]);
  });
});
