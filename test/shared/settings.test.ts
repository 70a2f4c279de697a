import { ask, fault } from "../ask";
import { near } from "../within";

const quartLitres = 0.946352946;

describe("the shop", () => {
  it("has US units and defaults where nothing is said", () => near(ask("FILL", 6, 5, 104), 1.136727329763616));

  it("takes the word SI in its place", () => {
    near(ask("FILL", 152.4, 127, 104 * 16.387064, undefined, "SI"), 1.136727329763616 * quartLitres);
    near(ask("FILL", 152.4, 127, 104 * 16.387064, undefined, " si "), 1.136727329763616 * quartLitres);
  });

  it("converts its defaults, and does not round them", () => {
    near(ask("DYE", 1, undefined, "SI"), 0.25 / 0.192);
  });

  it("lets an argument beat a setting, and a setting beat the default", () => {
    const shop = [["dye rate", 0.5]];
    expect(ask("DYE", 2, undefined, shop)).toBeCloseTo(1, 12);
    expect(ask("DYE", 2, 0.125, shop)).toBeCloseTo(0.25, 12);
    expect(ask("DYE", 2)).toBeCloseTo(0.5, 12);
  });

  it("reads settings in their units as typed, in any spelling of the name", () => {
    near(ask("FILL", 6, 5, 104, undefined, [["Cover", "25.4 mm"]]), 1.136727329763616);
    near(
      ask("BAKE", 1, 1, 5, 0.4, [
        ["In The Oven", "FAN"],
        ["shortest-bake", 0],
      ]),
      ask("BAKE", 1, 1, 5, 0.4, [
        ["oven surface coefficient", 20],
        ["shortest bake", 0],
      ]) as number,
    );
  });

  it("passes over headings, untouched rows and a header", () => {
    near(
      ask("FILL", 6, 5, 104, undefined, [
        ["Setting", "Value"],
        ["The oven", ""],
        ["", ""],
        ["cover", 1],
        ["gap", null],
      ]),
      1.136727329763616,
    );
  });

  it("takes weights in what the scale reads", () => {
    const typed = ask("DRYWEIGHT", 104, 0.1, [["scale reads", "g"]]);
    near(typed, 104 / 1.1);
  });

  it("refuses a setting nobody knows and names the nearest", () => {
    expect(fault("FILL", 6, 5, 104, undefined, [["cuver", 1]])).toEqual({
      error: "#VALUE!",
      message: "shop: there is no setting “cuver”; did you mean “cover”?",
    });
  });

  it("refuses a value out of its range, naming the setting and the range in the shop's units", () => {
    expect(fault("BAKE", 1, 1, 5, 0.4, [["oven", 400]]).message).toBe(
      "shop, oven: oven temperature must be from 100 °F to 300 °F: 400 °F is outside",
    );
    expect(
      fault("BAKE", 25, 25, 125, 0.4, [
        ["units", "SI"],
        ["oven", 400],
      ]).message,
    ).toBe("shop, oven: oven temperature must be from 37.78 °C to 148.9 °C: 400 °C is outside");
  });

  it.each([
    ["a word that is no system", "metric"],
    ["a number", 5],
    ["three columns", [["cover", 1, "in"]]],
    ["one column", [["cover"], ["gap"]]],
  ])("refuses %s", (_, shop) => {
    expect(fault("FILL", 6, 5, 104, undefined, shop as never)).toEqual({
      error: "#VALUE!",
      message: 'shop takes two columns, the name of a setting and its value, or just "US" or "SI"',
    });
  });

  it("hands an error in it on", () => {
    expect(fault("FILL", 6, 5, 104, undefined, [["cover", { error: "#REF!", message: "" }]]).error).toBe("#REF!");
  });
});
