import { answers } from "../../../src/run/answers";

it("has the usual values where a workbook has no My Shop", () => {
  expect(answers.holds("oven", [])).toBe(200);
  expect(answers.length("3/4", "label width", [])).toBeCloseTo(0.75, 12);
});
