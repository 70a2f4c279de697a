import { fractions, hourOrClock, plainNumber } from "../../shared/numberformat";
import { model } from "../../sheet/engine";
import { toEngine } from "../../sheet/lackedformats";

const formats = {
  length: fractions,
  volume: plainNumber,
  weight: "0.0",
  share: "0%",
  hour: hourOrClock,
  date: "yyyy-mm-dd",
  words: "@",
  blank: "",
};
jest.spyOn(console, "debug").mockImplementation();

type Cell = keyof typeof formats;
const cells = Object.keys(formats) as Cell[];

const opened = () => {
  const sheet = {
    id: "s",
    name: "S",
    cells: {},
    formats: Object.fromEntries(cells.map((_, i) => [`${String.fromCharCode(65 + i)}1`, i + 1])),
  };
  const known = Object.fromEntries(Object.values(formats).map((format, i) => [i + 1, toEngine(format)]));
  return model({ version: "19.3.2", sheets: [sheet], formats: known, styles: {}, borders: {} });
};

const book = opened();
const sheetId = book.getters.getActiveSheetId();
const at = (cell: Cell) => ({ sheetId, row: 0, col: cells.indexOf(cell) });

/** Types into a cell as the grid does, which adds the format of a day to what it takes for one. */
function type(cell: Cell, content: string) {
  const isDay = /^\d+[/ -]\d+$/.test(content);
  book.dispatch("UPDATE_CELL", { ...at(cell), content, ...(isDay && cell !== "date" ? { format: "m/d" } : {}) });
  const { value, formattedValue } = book.getters.getEvaluatedCell(at(cell));
  return { value, shown: formattedValue, drawn: book.getters.getCellText(at(cell), {}), format: book.getters.getCell(at(cell))?.format };
}

const took = (cell: Cell, content: string) => {
  const { value, shown, drawn, format } = type(cell, content);
  expect(drawn).toBe(shown);
  if (cell !== "blank") expect(format).toBe(toEngine(formats[cell]));
  return [value, shown];
};

it.each<[Cell, string, number | string, string]>([
  ["length", "3/4", 0.75, "3/4"],
  ["length", "13/16", 0.8125, "13/16"],
  ["length", "1 1/8", 1.125, "1 1/8"],
  ["length", "1-1/2", 1.5, "1 1/2"],
  ["length", "½", 0.5, "1/2"],
  ["length", "0.75", 0.75, "3/4"],
  ["length", "6", 6, "6"],
  ["length", "3/4 in", "3/4 in", "3/4 in"],
  ["length", "19 mm", "19 mm", "19 mm"],
  ["length", "3/4/2026", "3/4/2026", "3/4/2026"],
  ["length", "5 PM", "5 PM", "5 PM"],
  ["volume", "1 1/2", 1.5, "1.5"],
  ["volume", "3/4", 0.75, "0.75"],
  ["volume", "5-10", "5-10", "5-10"],
  ["weight", "1 1/2", 1.5, "1.5"],
  ["weight", "21 g", "21 g", "21 g"],
  ["share", "12 %", 0.12, "12%"],
  ["share", "1/2", 0.5, "50%"],
  ["hour", "8", 8, "8"],
  ["hour", "5 PM", 17 / 24, "5:00 PM"],
  ["hour", "17:30", 17.5 / 24, "5:30 PM"],
  ["hour", "7 1/2", 7.5, "7.5"],
  ["date", "3/4/2026", 46085, "2026-03-04"],
  ["date", "2026-03-14", 46095, "2026-03-14"],
  ["words", "3/4", "3/4", "3/4"],
  ["blank", "3/4", 0.75, "3/4"],
])("a %s cell takes %s", (cell, typed, value, shown) => {
  const [took1, shown1] = took(cell, typed);
  expect([typeof took1 === "number" ? Number(took1.toFixed(9)) : took1, shown1]).toEqual([
    typeof value === "number" ? Number(value.toFixed(9)) : value,
    shown,
  ]);
});

it.each(cells.filter((cell) => cell !== "date"))("a %s cell is no day after a fraction was typed and mended", (cell) => {
  type(cell, "3/4");
  type(cell, "5 PM");
  expect(type(cell, "0.75").shown).not.toMatch(/1899|12\/30/);
});

it("a cell without a format takes a day as before", () => {
  const fresh = opened();
  const cell = { sheetId: fresh.getters.getActiveSheetId(), row: 4, col: 4 };
  fresh.dispatch("UPDATE_CELL", { ...cell, content: "2026-03-14" });
  expect(fresh.getters.getEvaluatedCell(cell)).toMatchObject({ value: 46095, formattedValue: "2026-03-14" });
});

describe("text in the form of a link", () => {
  const shown = (content: string) => {
    book.dispatch("UPDATE_CELL", { ...at("blank"), content, format: "" });
    const { value, link } = book.getters.getEvaluatedCell(at("blank"));
    return { value, link: (link as { url: string } | undefined)?.url, drawn: book.getters.getCellText(at("blank"), {}).trim() };
  };

  it.each(["[c](javascript:alert(1))", "[c](JavaScript:alert`1`)", "[c]( javascript:x)", "[c](data:text/html,x)", "[c](vbscript:x)"])(
    "%s stays text",
    (text) => expect(shown(text)).toEqual({ value: text, link: undefined, drawn: text }),
  );

  it("leads to the web where it says so", () => {
    expect(shown("[c](https://a.example/b)")).toEqual({ value: "c", link: "https://a.example/b", drawn: "c" });
  });
});
