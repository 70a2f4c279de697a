import { ask, fault, spill } from "../../ask";
import published from "../../published/moisture.json";
import { within } from "../../within";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];

describe("MOISTURE", () => {
  it.each(rows("moisture_content_oven_dry_basis"))("$inputs.m_wet over $inputs.m_dry is $expected % ($source)", (row) =>
    within(100 * (ask("MOISTURE", row.inputs.m_wet, row.inputs.m_dry) as number), row.expected, row.tolerance),
  );

  it.each(rows("wet_basis_to_dry_basis"))("$inputs.wet_basis_pct % of the wet weight is $expected % of the dry ($source)", (row) =>
    within(100 * (ask("MOISTURE", 100, 100 - row.inputs.wet_basis_pct) as number), row.expected, row.tolerance),
  );

  it("says so when the piece is lighter than when dry, and forgives the last digit of a conversion", () => {
    expect(fault("MOISTURE", 90, 93)).toEqual({ error: "#VALUE!", message: "weight is lighter than when dry: weigh again" });
    expect(ask("MOISTURE", 93 * (1 - 1e-12), 93)).toBe(0);
  });

  it("takes each weight in its own unit", () => within(ask("MOISTURE", "104 g", "0.093 kg"), 11 / 93, 1e-12));

  it("keeps a bad row in its row and leaves an empty row empty", () => {
    expect(spill("MOISTURE", [104, "", "abc"], [93, "", 93])).toEqual([
      [expect.closeTo(0.11828, 5)],
      [""],
      [{ error: "#VALUE!", message: "weight: “abc” is not a weight: type a value such as 104" }],
    ]);
  });

  it("asks for the dry weight where it is missing", () => {
    expect(spill("MOISTURE", [104], [""])).toEqual([
      [{ error: "#VALUE!", message: "oven-dry weight is missing: type a value such as 93" }],
    ]);
  });
});
