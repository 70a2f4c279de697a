import { ask, fault } from "../../ask";
import published from "../../published/resin.json";
import { near, within } from "../../within";

describe("DYE", () => {
  it.each(published.filter(({ quantity }) => quantity === "dye"))("$fluid qt take $expected tsp ($source)", ({ fluid, expected, off }) =>
    within(ask("DYE", fluid), expected as number, off!),
  );

  it("takes a rate in other units", () => near(ask("DYE", 4, "1 tsp/gal"), 1));
  it("speaks millilitres to the litre under SI", () => near(ask("DYE", 2, 1.5, "SI"), 3));
  it("takes no dye at a rate of 0", () => expect(ask("DYE", 2, 0)).toBe(0));
  it("refuses more dye than fluid", () =>
    expect(fault("DYE", 2, 100).message).toBe(
      "dye powder for each measure of resin must be from 0 tsp per qt to 96 tsp per qt: 100 tsp per qt is outside",
    ));
});
