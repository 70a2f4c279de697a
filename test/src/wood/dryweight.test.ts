import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/moisture.json";
import { near, within } from "../../within";
import { systemsAgree } from "./systems";

const weights = fc.double({ min: 0.01, max: 1e5, noNaN: true });
const moistures = fc.double({ min: 0, max: 3, noNaN: true });

describe("DRYWEIGHT", () => {
  it.each(published.filter(({ quantity }) => quantity === "moisture_content_oven_dry_basis"))(
    "$inputs.m_wet at $expected % is $inputs.m_dry when dry ($source)",
    ({ inputs, expected }) => near(ask("DRYWEIGHT", inputs.m_wet!, Number(expected) / 100), inputs.m_dry!, 5e-5),
  );

  it("gives back the weight that MOISTURE was told", () =>
    fc.assert(
      fc.property(weights, moistures, (weight, moisture) => {
        const dry = ask("DRYWEIGHT", weight, moisture);
        within(ask("MOISTURE", weight, dry as number), moisture, 1e-9);
      }),
    ));

  it("agrees in ounces and grams", () => fc.assert(fc.property(weights, moistures, (w, m) => systemsAgree("DRYWEIGHT", w, m))));

  it("answers in the unit typed, and in what the scale reads otherwise", () => {
    near(ask("DRYWEIGHT", "112 g", 0.12), 100);
    near(ask("DRYWEIGHT", "1.12 kg", 0.12, "SI"), 1);
    near(ask("DRYWEIGHT", 112, 0.12, [["scale reads", "g"]]), 100);
  });

  it.each([
    { typed: [104, 12], message: "moisture, oven-dry basis: 12 means 1200 %: type 12 % or 0.12" },
    { typed: [104, -0.1], message: "moisture, oven-dry basis must be from 0 % to 300 %: -10 % is outside" },
    { typed: ["104 in", 0.1], message: "weight: “104 in” is a length, not a weight: type it in kg, g, oz, lb" },
    { typed: [104, null], message: "moisture, oven-dry basis is missing: type a value such as 12 %" },
  ])("$message", ({ typed, message }) => expect(fault("DRYWEIGHT", ...typed)).toEqual({ error: "#VALUE!", message }));
});
