import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/moisture.json";
import { near, within } from "../../within";
import { systemsAgree } from "./systems";

const weights = fc.double({ min: 0.01, max: 1e5, noNaN: true });
const moistures = fc.double({ min: 0.001, max: 3, noNaN: true });

describe("STOPWEIGHT", () => {
  it.each(published.filter(({ quantity, inputs }) => quantity === "mass_at_target_mc" && inputs.mc_now! > inputs.mc_target!))(
    "$inputs.mass from $inputs.mc_now % to $inputs.mc_target % stops at $expected ($source)",
    ({ inputs, expected, tolerance }) =>
      within(ask("STOPWEIGHT", inputs.mass!, inputs.mc_now! / 100, inputs.mc_target! / 100), Number(expected), tolerance),
  );

  it("is the dry weight when the target is 0", () =>
    fc.assert(fc.property(weights, moistures, (w, m) => near(ask("STOPWEIGHT", w, m, 0), ask("DRYWEIGHT", w, m) as number, 1e-12))));

  it("agrees in ounces and grams", () => fc.assert(fc.property(weights, moistures, (w, m) => systemsAgree("STOPWEIGHT", w, m, m / 2))));

  it("answers in the unit typed", () => near(ask("STOPWEIGHT", "118.5 g", 0.185, 0.1), 110));

  it.each([
    [0.08, 0.1, "8 %", "10 %"],
    [0.1, 0.1, "10 %", "10 %"],
    [0, 0, "0 %", "0 %"],
  ])("at %d the wood is already as dry as %d", (moisture, target, has, wanted) =>
    expect(fault("STOPWEIGHT", 104, moisture, target)).toEqual({
      error: "#VALUE!",
      message: `the wood is already drier, or just as dry: its moisture of ${has} is not above the target of ${wanted}`,
    }),
  );

  it("refuses a target in whole percent", () =>
    expect(fault("STOPWEIGHT", 104, 0.2, 8).message).toBe("moisture to dry to: 8 means 800 %: type 8 % or 0.08"));
});
