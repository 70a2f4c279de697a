import * as fc from "fast-check";
import { ask, fault } from "../../ask";
import { near } from "../../within";

const size = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const chamber = fc.oneof(
  size(1, 60),
  fc.tuple(size(1, 60), size(1, 60)).map((sides) => [sides]),
);

describe("FLUIDLEVEL", () => {
  it.each([
    { typed: [6, 0, 9 * Math.PI], is: 1, from: "a full disc an inch high" },
    { typed: [6, "1 L", "1 L"], is: 2e-3 / (Math.PI * 0.0762 ** 2) / 0.0254, from: "two litres over the floor" },
    { typed: ["10 x 5.775 in", 1, 0], is: 1, from: "a quart is 57.75 in³, NIST SP 811" },
  ])("of $typed is $is in ($from)", ({ typed, is }) => near(ask("FLUIDLEVEL", ...(typed as Parameters<typeof ask>[1][])), is));

  it("is the inverse of FILL: stack and cover, before the wood takes any", () =>
    fc.assert(
      fc.property(chamber, size(0.1, 50), size(0, 0.99), size(0, 5), (inside, stack, share, cover) => {
        const area = typeof inside === "number" ? (Math.PI * inside ** 2) / 4 : inside[0][0] * inside[0][1];
        const solids = share * area * (stack + cover);
        const fluid = ask("FILL", inside, stack, solids, 0, [["cover", cover]]);
        near(ask("FLUIDLEVEL", inside, fluid, solids), stack + cover);
      }),
    ));

  it("agrees under US and SI", () =>
    fc.assert(
      fc.property(size(1, 60), size(0, 100), size(0, 1000), (d, fluid, solids) =>
        near(
          ask("FLUIDLEVEL", d * 25.4, fluid * 0.946352946, solids * 16.387064, "SI"),
          (ask("FLUIDLEVEL", d, fluid, solids) as number) * 25.4,
        ),
      ),
    ));

  it.each([
    {
      typed: [6, "1.14 lb", 104],
      message:
        "resin in the chamber: “1.14 lb” is a weight, not a volume: type it in m³, L, mL, cm³, in³, ft³, gal, qt, pt, cup, fl oz, tbsp, tsp",
    },
    { typed: [6, "10 oz", 104], message: "resin in the chamber: “10 oz” is a weight: for a volume type fl oz" },
    { typed: [6, 1.14, -1], message: "volume of pieces and submerged ballast must be from 0 in³ to 1000000 in³: -1 in³ is outside" },
  ])("says “$message”", ({ typed, message }) => {
    expect(fault("FLUIDLEVEL", ...(typed as Parameters<typeof fault>[1][]))).toEqual({ error: "#VALUE!", message });
  });
});
