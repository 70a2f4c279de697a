import { cured, filledWood } from "../../../src/cure/filled";
import published from "../../published/thermal.json";
import { near, within } from "../../within";

describe("wood filled with resin", () => {
  it("is dry wood while nothing is in it: k = 0.1941 G + 0.01864, ρc = 1000 G × 1379 (Wood Handbook, FPL-GTR-282, eq. 4-17 and ch. 4)", () => {
    near(filledWood(0.4, 0).most, 0.09628);
    near(filledWood(0.4, 0).heat, 551600);
  });

  it("takes its heat capacity from the Handbook's formula at 330 K", () => {
    const row = published.find((r) => r.quantity === "wood_heat_capacity")!;
    within(filledWood(1, 0).heat / 1e6, row.expected as number, row.tolerance + 3e-4);
  });

  it.each([
    { bound: "least", k: 0.120557 },
    { bound: "k", k: 0.144756 },
    { bound: "most", k: 0.168955 },
  ] as const)(
    "$bound at gravity 0.40 and 60 % full is $k W/mK to 0.3 %, as the bake rows of thermal.json (cell wall 1.53) have it",
    ({ bound, k }) => {
      near(filledWood(0.4, 0.6)[bound], k, 0.003);
      near(filledWood(0.4, 0.6, cured).heat, 1326864, 0.003);
    },
  );

  it("keeps its bounds in order for every wood and fullness", () => {
    for (let gravity = 0.05; gravity <= 1.54; gravity += 0.01)
      for (const fullness of [0, 0.3, 0.6, 1, 1.05]) {
        const { least, k, most } = filledWood(gravity, fullness);
        expect(least).toBeLessThanOrEqual(k * (1 + 1e-12));
        expect(k).toBeLessThanOrEqual(most * (1 + 1e-12));
      }
  });
});
