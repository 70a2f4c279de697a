import { ask, fault, spill } from "../../ask";
import { near } from "../../within";

describe("INTUB", () => {
  it("is weight over density: a quart of water at 1 g/mL weighs 946.352946 g (NIST HB 44, App. C)", () =>
    near(
      ask("INTUB", 1946.352946, 1000, [
        ["scale reads", "g"],
        ["resin density", 1],
      ]),
      1,
      1e-9,
    ));

  it("takes the resin's own density, and litres under SI", () => {
    near(ask("INTUB", 2030, 1000, "SI"), 1, 1e-12);
    near(ask("INTUB", 60, 20), (40 * 28.349523125) / 1.03 / 946.352946, 1e-9);
  });

  it("answers a column, and refuses a tub that weighs less than when empty", () => {
    expect(spill("INTUB", [20, "", 10], [20, "", 20])).toEqual([
      [0],
      [""],
      [{ error: "#VALUE!", message: expect.stringContaining("lighter than the empty tub") }],
    ]);
    expect(fault("INTUB", 20, "").message).toContain("is missing");
  });
});
