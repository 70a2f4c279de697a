import { styleOf } from "../../../../src/workbook/looks";
import { ask } from "../../../ask";
import { near } from "../../../within";
import { filled } from "../filled";

const spaced = [
  ["in the oven", "spaced"],
  ["fullness", 0.55],
];
const us = filled("Handout");

it("bakes by thickness and dyes by volume as the functions do", () => {
  (us.under("thick, in", 8) as number[]).forEach((thickness, i) => {
    near(us.under("bake, minutes", 8)[i], ask("BAKE", thickness, undefined, 5, undefined, spaced) as number);
  });
  (us.under("fluid, qt", 8) as number[]).forEach((fluid, i) => {
    near(us.under("dye, tsp", 8)[i], ask("DYE", fluid) as number);
  });
  expect(us.under("in spoons", 3)).toEqual(["1/8 tsp", "1/4 tsp", "1/4 tsp + 1/8 tsp"]);
});

it("is one page, in big type", () => {
  expect(us.sheet.print.pages).toBe(1);
  const sizes = [...us.sheet.cells.values()].map(({ look, format }) => styleOf(look, format).font?.size ?? 0);
  expect(Math.min(...sizes.filter(Boolean))).toBeGreaterThanOrEqual(14);
});

it("says under which oven its minutes hold, in the units of the file", () => {
  const words = (system: "US" | "SI") => {
    const { sheet, value } = filled("Handout", {}, system);
    const [at] = [...sheet.cells].find(([, { look }]) => look === "bigNote")!;
    return value(...(at.split(",").map(Number) as [number, number]));
  };
  expect(words("US")).toMatch(/5 in long.*190 °F in the middle, oven at 200 °F/);
  expect(words("SI")).toMatch(/125 mm long.*88 °C in the middle, oven at 93 °C/);
});
