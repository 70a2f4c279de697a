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
    const count = String(blanks.under("in the plan", 14)[i]).startsWith("left") ? 0 : Number(blanks.under("count", 14)[i]);
    return Array.from({ length: count }, (_, piece) => (count > 1 ? `${kind}, ${piece + 1} of ${count}` : String(kind)));
  });
  expect(own.slice(3)).toEqual(kinds.slice(0, 27));
});

it("goes on where the sheet before it ended, and leaves empty what has no piece", () => {
  const head = labels.rows("color of the tub")[0];
  const typed = filled("Labels", { Labels: { [`@${head + 2}`]: { 4: 95 } } });
  const own = heads(typed).slice(3);
  expect(own.filter(Boolean)).toHaveLength(97 - 94);
  expect(own.slice(3).every((words) => words === "")).toBe(true);
});

it("gives no label to rows that the plan leaves out, says so, and says what to do where the books are empty", () => {
  const wet = filled("Labels", { Blanks: { "spalted boxelder": { 1: 2.5 } } });
  expect(heads(wet)[3]).not.toMatch(/spalted boxelder/);
  expect(wet.texts.join(" ")).not.toMatch(/Blanks has no pieces/);
  const said = (sheet: typeof labels) => String(sheet.value(sheet.rows("color of the tub")[0] + 3, 0));
  expect(said(wet)).toMatch(/rows that Blanks leaves out of the plan: no label/);
  const empty = filled("Labels", {}, "US", "empty");
  expect(said(empty)).toMatch(/^Blanks has no pieces yet.* The Resin Book has no resin/);
});
