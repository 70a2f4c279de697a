import { filled } from "../filled";

const labels = filled("Labels");
const blanks = filled("Blanks");
/** The first lines of all labels, from the first tub on. */
const heads = (sheet = labels): string[] =>
  [...sheet.sheet.cells]
    .filter(([, { look }]) => look === "labelHead")
    .map(([at]) => at.split(",").map(Number))
    .sort(([a, b], [c, d]) => a - c || b - d)
    .map(([row, column]) => String(sheet.value(row, column)));

it("has a label for each tub, then one for each piece of Blanks in turn", () => {
  const own = heads();
  expect(own).toHaveLength(30);
  expect(own.slice(0, 3)).toEqual(Array(3).fill("Mixed resin, blue"));
  const kinds = blanks.under("kind", 14).flatMap((kind, i) => {
    const count = Number(blanks.under("count", 14)[i]);
    return Array.from({ length: count }, (_, piece) => (count > 1 ? `${kind}, ${piece + 1} of ${count}` : String(kind)));
  });
  expect(own.slice(3)).toEqual(kinds.slice(0, 27));
});

it("goes on where the sheet before it ended, and leaves empty what has no piece", () => {
  const head = labels.rows("color")[0];
  const typed = filled("Labels", { Labels: { [`@${head + 2}`]: { 4: 95 } } });
  const own = heads(typed).slice(3);
  expect(own.filter(Boolean)).toHaveLength(100 - 94);
  expect(own.slice(6).every((words) => words === "")).toBe(true);
});
