import { ask, fault, spill } from "../../ask";
import published from "../../published/resin.json";
import { within } from "../../within";

describe("WEIGHTGAIN", () => {
  it.each(published.filter(({ quantity }) => quantity === "weight gain"))(
    "from $before to $cured is $expected ($source)",
    ({ before, cured, expected, off }) => within(ask("WEIGHTGAIN", before, cured), expected as number, off!),
  );

  it("takes weights in any units", () => within(ask("WEIGHTGAIN", "1 lb", "24 oz"), 0.5, 1e-12));
  it("gains nothing where the last digit of a scale is all the difference", () => expect(ask("WEIGHTGAIN", 100, 100 - 1e-8)).toBe(0));

  it("refuses a piece that became lighter, in its row", () =>
    expect(spill("WEIGHTGAIN", [20, 20], [19, 30])).toEqual([
      [{ error: "#VALUE!", message: "weight cured is lighter than before: weigh again" }],
      [expect.closeTo(0.5, 12)],
    ]));

  it("names the weight that is missing", () =>
    expect(fault("WEIGHTGAIN", 20, "").message).toBe("weight cured is missing: type a value such as 46"));
});
