import { cautions, first } from "../../../../src/cautions";
import { settings } from "../../../../src/shop";
import { versionText } from "../../../../src/version";
import { filled } from "../filled";

const { sheet, texts, value, whole } = filled("Start");
const names = whole.book.sheets.map(({ name }) => name);
const links = [...sheet.cells].flatMap(([at, { to, value, look }]) => (to ? [{ at, to, value, look }] : []));

it.each([
  ["Plan a batch", ["Blanks", "Loads", "Supplies", "Run Log", "Price Tag"]],
  ["Run a demo", ["Today", "Safety", "Blanks", "Labels", "Handout"]],
  ["Look after the resin", ["Resin Book", "Supplies", "My Shop"]],
])("the door “%s” is a button to its first sheet, and leads through its sheets in order", (name, sheets) => {
  const door = links.find(({ value }) => value === name)!;
  expect(door).toMatchObject({ look: "button", to: sheets[0] });
  const [row, column] = door.at.split(",").map(Number);
  const below = [2, 3, 4].flatMap((down) => [0, 1].map((right) => sheet.cells.get(`${row + down},${column + right}`)?.to));
  expect(below.filter(Boolean)).toEqual(sheets);
});

it("tells where to begin, one press away", () => {
  for (const which of ["demo", "empty"] as const) {
    const start = filled("Start", {}, "US", which).sheet;
    const [begin] = [...start.cells.values()].filter(({ look, to }) => look === "button" && to === "My Shop");
    expect(begin.value).toBe(which === "demo" ? "Make your own: start here first" : "Begin with My Shop");
  }
});

it("shows a run as a picture, told in words", () => {
  expect(sheet.pictures).toEqual([expect.objectContaining({ file: "run.png", alt: expect.stringMatching(/^A run in five pictures/) })]);
});

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

it("says which release answers", () => {
  const row = [...sheet.cells]
    .find(([, { formula, look }]) => formula && look === "words")![0]
    .split(",")
    .map(Number);
  expect(value(row[0], row[1])).toBe(`Porewise ${versionText}. Self-check compares its answers with known ones.`);
});
