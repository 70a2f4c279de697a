import { ask, fault } from "../../ask";
import published from "../../published/resin.json";
import { within } from "../../within";

describe("BAKELOSS", () => {
  it.each(published.filter(({ quantity }) => quantity === "loss in the oven"))(
    "$before dry, $drained drained, $cured cured: $expected ($source)",
    ({ before, drained, cured, expected, off }) => within(ask("BAKELOSS", before, drained, cured), expected as number, off!),
  );

  it("is all of it where the piece weighs what it did dry", () => expect(ask("BAKELOSS", 20, 40, 20)).toBe(1));

  it.each([
    [20, 19, 18, "weight drained is lighter than before: weigh again"],
    [20, 20, 20, "weight drained is no more than before: there is no resin to lose"],
    [20, 40, 19, "weight cured is lighter than before: weigh again"],
    [20, 40, 41, "weight cured is heavier than drained: weigh again"],
  ])("refuses %d dry, %d drained, %d cured in words", (before, drained, cured, message) =>
    expect(fault("BAKELOSS", before, drained, cured)).toEqual({ error: "#VALUE!", message }),
  );
});
