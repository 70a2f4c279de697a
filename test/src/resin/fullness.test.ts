import * as fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/resin.json";
import { near, within } from "../../within";

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("FULLNESS", () => {
  it.each(published.filter(({ quantity }) => quantity === "fullness"))(
    "$before to $drained oz in $solids in³ of gravity $gravity is $expected ($source)",
    ({ before, drained, solids, gravity, moisture, density, expected, off }) =>
      within(ask("FULLNESS", before, drained, solids, gravity, moisture, [["resin density", density!]]), expected as number, off!),
  );

  it("finds the fullness that UPTAKE was told", () =>
    fc.assert(
      fc.property(
        share(1, 500),
        share(0.1, 1),
        share(0.05, 1.05),
        share(0, 0.25),
        share(0.8, 1.5),
        (solids, gravity, fullness, moisture, density) => {
          const fluid = ask("UPTAKE", solids, gravity, fullness, moisture, "SI") as number;
          const before = solids * gravity * (1 + moisture);
          const shop = [
            ["units", "SI"],
            ["resin density", density],
          ];
          near(ask("FULLNESS", before, before + fluid * 1000 * density, solids, gravity, moisture, shop), fullness, 1e-9);
        },
      ),
    ));

  it("goes with the weight gain of dry wood that loses nothing: gain = fullness × resin density × (1/G − 1/1.54), from memory", () =>
    fc.assert(
      fc.property(share(0.2, 0.9), share(0.1, 1), (gravity, full) => {
        const before = 100 * gravity;
        const cured = before + full * 100 * 1.03 * (1 - gravity / 1.54);
        near(ask("WEIGHTGAIN", before, cured), full * 1.03 * (1 / gravity - 1 / 1.54), 1e-9);
        near(ask("FULLNESS", before, cured, 100, gravity, 0, "SI"), full, 1e-9);
      }),
    ));

  it("is the number to put into the shop as fullness", () => {
    const calibrated = ask("FULLNESS", 24, 49, 104, 0.45) as number;
    const fluid = ask("UPTAKE", 104, 0.45, "", "", [["fullness", calibrated]]) as number;
    within((fluid * 946.352946 * 1.03) / 28.349523125, 25, 1e-9);
  });

  it.each([
    [[24, 23, 104, 0.45], "#VALUE!", "weight drained is lighter than before: weigh again"],
    [[24, 80, 104, 0.45], "#N/A", "more resin than there is room for, 127.8 % of it: check the volume and gravity"],
    [[24, 49, 104, 0.45, 0.31], "#N/A", "too wet to take resin: dry it first"],
    [[24, 49, 104, 1.54], "#N/A", "no empty space is left at this gravity and moisture: the wood takes nothing"],
    [[24, 49, "", 0.45], "#VALUE!", "volume of the wood is missing: type a value such as 104 in³"],
    [[24, 49, 104, 0.45, 12], "#VALUE!", "moisture, oven-dry basis: 12 means 1200 %: type 12 % or 0.12"],
  ])("of %j is %s", (typed, error, message) => expect(fault("FULLNESS", ...typed)).toEqual({ error, message }));

  it("takes a hair over full for measuring: 1.05 is given, more is not", () => {
    const room = 100 * (1 - 0.5 / 1.54);
    near(ask("FULLNESS", 50, 50 + 1.05 * room * 1.03, 100, 0.5, 0, "SI"), 1.05, 1e-12);
    expect(fault("FULLNESS", 50, 50 + 1.051 * room * 1.03, 100, 0.5, 0, "SI").error).toBe("#N/A");
  });
});
