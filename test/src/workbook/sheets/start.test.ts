import { cautions, first } from "../../../../src/cautions";
import { settings } from "../../../../src/shop";
import { filled } from "../filled";

const { sheet, texts, value, rows, whole } = filled("Start");
const names = whole.book.sheets.map(({ name }) => name);
const linked = (row: number) =>
  [...sheet.cells].flatMap(([at, { to }]) => (to && at.startsWith(`${row},`) ? [to] : [])).filter((name) => names.includes(name));

it.each([
  ["I give a demo", ["My Shop", "Blanks", "Today", "Safety", "Handout"]],
  ["I do a batch", ["Blanks", "Loads", "Supplies", "Run Log", "Price Tag"]],
  ["I look after the resin", ["Resin Book", "Supplies", "My Shop"]],
])("the door “%s” leads through its sheets in order", (door, sheets) => expect(linked(rows(door)[0])).toEqual(sheets));

it("leads to every other sheet", () =>
  expect(new Set([...sheet.cells.values()].flatMap(({ to }) => to ?? []))).toEqual(new Set(names.slice(1))));

it("says every caution, the makers' word first", () => {
  const said = texts.slice(-Object.keys(cautions).length - 1);
  expect(said).toEqual([first, ...Object.values(cautions)]);
});

it("asks to check what the label says before the first run", () => {
  const asked = texts.find((text) => text.startsWith("Before your first run"));
  for (const { name } of settings.filter(({ basis }) => basis.startsWith("from your label"))) expect(asked).toContain(name);
});

it("repeats the line of the self-check", () => {
  const row = [...sheet.cells]
    .find(([, { formula, look }]) => formula && look === "words")![0]
    .split(",")
    .map(Number);
  expect(value(row[0], row[1])).toMatch(/^Porewise .*: (\d+) of \1 agree$/);
});
