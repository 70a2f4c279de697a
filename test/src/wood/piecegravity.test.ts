import fc from "fast-check";
import { ask, fault } from "../../ask";
import published from "../../published/density.json";
import { near, within } from "../../within";
import { systemsAgree } from "./systems";

describe("PIECEGRAVITY", () => {
  it.each(published.filter(({ quantity }) => quantity === "density_at_mc") as any[])(
    "a litre of $expected g at $inputs.mc % is of $inputs.Gx ($source)",
    ({ inputs, expected, tolerance }) => within(ask("PIECEGRAVITY", expected, 1000, inputs.mc / 100, "SI"), inputs.Gx, tolerance / 1000),
  );

  it("finds the gravity again that weight, volume and moisture were made from", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1.54, noNaN: true }),
        fc.double({ min: 0.1, max: 1e4, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (G, volume, M) => near(ask("PIECEGRAVITY", `${G * (1 + M) * volume} g`, `${volume} cm3`, M), G),
      ),
    ));

  it("agrees in ounces and grams, inches and centimetres", () =>
    fc.assert(fc.property(fc.double({ min: 1, max: 50, noNaN: true }), (w) => systemsAgree("PIECEGRAVITY", w, 104, 0.08))));

  it("takes a piece without a moisture as dry", () => near(ask("PIECEGRAVITY", 450, 1000, undefined, "SI"), 0.45));

  it("takes solid cell wall, and nothing denser", () => {
    near(ask("PIECEGRAVITY", 1540, 1000, 0, "SI"), 1.54);
    expect(fault("PIECEGRAVITY", 680, 104)).toEqual({
      error: "#VALUE!",
      message:
        "specific gravity comes to 11.31, over the 1.54 of solid cell wall: check weight and volume and their units, grams typed as ounces?",
    });
  });

  it("asks for the volume", () =>
    expect(fault("PIECEGRAVITY", 24, "24 oz")).toEqual({
      error: "#VALUE!",
      message: "volume of the piece: “24 oz” is a weight: for a volume type fl oz",
    }));
});
