import { defaults } from "../../../../src/checklist/items";
import { filled } from "../filled";

const { sheet, texts, validations } = filled("Safety");

it("prints every item of the checklist with its reason, on one page", () => {
  for (const { text, why } of defaults) expect(texts).toEqual(expect.arrayContaining([text, why]));
  expect(sheet.print.pages).toBe(1);
});

it("has a box to tick beside each", () => {
  expect([...sheet.cells.values()].filter(({ look }) => look === "tick")).toHaveLength(defaults.length);
  expect(validations.every(({ type, range }) => type === "list" && range.startsWith("A"))).toBe(true);
});
