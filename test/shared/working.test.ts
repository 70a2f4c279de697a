import { isFault } from "../../shared/outcome";
import type { Working } from "../../shared/working";
import { namedEquation } from "../../shared/working";
import { catalogue, explain } from "../../src/catalogue";

const contract = (name: string) => catalogue.find((c) => c.name === name)!;
const working = (name: string, ...typed: (number | string)[]): Working => {
  const told = explain(
    contract(name),
    typed.map((cell) => [[cell]]),
  );
  if (!told || isFault(told)) throw new Error(`no working: ${JSON.stringify(told)}`);
  return told;
};

describe("the working of a number", () => {
  it("puts the numbers into the equation, with their units", () => {
    expect(namedEquation(contract("MOISTURE"))).toBe("(weight − dry weight) / dry weight");
    expect(working("MOISTURE", 104, 93)).toMatchObject({
      equation: "(104 − 93) / 93",
      answer: [["moisture, oven-dry basis", "11.8 %"]],
    });
  });

  it("speaks the shop's units", () => {
    expect(working("UPTAKE", 1704, 0.45, 0.6, 0, "SI").equation).toBe("1704 cm³ × 70.78 % × 60 %");
  });

  it("tells a guess with its likely range, and what must be said beside it", () => {
    const told = working("BAKE", 0.75, 0.75, 5, 0.4);
    expect(told.answer).toEqual([["minutes in the oven", "about 46 min, likely 33 to 82"]]);
    expect(told.beside.join()).toMatch(/^The resin heats itself, by up to 140 °F/);
  });

  it("says what is wrong where there is no answer", () => {
    expect(explain(contract("MOISTURE"), [[[90]], [[93]]])).toEqual({
      error: "#VALUE!",
      message: "weight is lighter than when dry: weigh again",
    });
  });

  it("explains one row of a column", () => {
    const told = explain(contract("MOISTURE"), [[[104], [100]], [[93]]], 1) as Working;
    expect(told.equation).toBe("(100 − 93) / 93");
  });

  it("has nothing to say of blank cells", () => expect(explain(contract("MOISTURE"), [[[""]], [[null]]])).toBeUndefined());
});
