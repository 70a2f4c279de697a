import { defaults } from "../../../../src/checklist/items";
import { room } from "../../../../src/checklist/onsheet";
import { filled } from "../filled";

const { sheet, texts, validations } = filled("Safety");

it("shows every item of the list with its reason; the items go to one page of paper", () => {
  for (const { text, why } of defaults) expect(texts).toEqual(expect.arrayContaining([text, why]));
  expect(sheet.print).toMatchObject({ pages: 1, columns: 3 });
});

it("has a box to tick beside each, and room for more", () => {
  expect([...sheet.cells.values()].filter(({ look }) => look === "tick")).toHaveLength(room);
  expect(room).toBeGreaterThan(defaults.length);
  expect(validations.some(({ type, range }) => type === "list" && range.startsWith("A"))).toBe(true);
});
