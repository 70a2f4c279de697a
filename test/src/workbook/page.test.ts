import { plainUnits } from "../../../shared/unit";
import { barometer } from "../../../src/vacuum/barometer";
import { ask, formula, written } from "../../../src/workbook/formula";
import { Page } from "../../../src/workbook/page";
import { refTo } from "../../../src/workbook/place";
import { plain } from "../../../src/workbook/plain";
import { needsAddIn } from "../../../src/workbook/shown";
import { failed, goneWords, verdict } from "../../../src/workbook/verdict";
import { recalculated } from "../../../tool/recalculated";

it.each([
  [1, "good", false],
  ["", "", false],
  ["too thick", "bad", true],
  [needsAddIn, goneWords, false],
])("of %j it says “%s”", (value, words, isMarked) => {
  const page = new Page("A", "a test", [10, 40]);
  const cell = page.line({ label: "cell", value, input: true });
  const said = page.line({ label: "said", formula: verdict(cell, "good", "bad") });
  const marked = page.line({ label: "marked", formula: failed(cell) });
  // Every sheet repeats what My Shop says first.
  const shop = new Page("My Shop", "its facts", [10]);
  const edition = plain({ units: plainUnits("US"), setting: () => undefined, standard: () => 0 });
  expect(written(failed(cell), edition, "A")).toContain(needsAddIn);
  const cached = recalculated({
    book: { title: "", sheets: [page.sheet, shop.sheet], names: [] },
    live: () => edition,
    plain: edition,
    check: refTo("A", 0, 0),
    paper: "a4",
  });
  expect(cached.value("A", said.row, 1)).toBe(words);
  expect(cached.value("A", marked.row, 1)).toBe(isMarked);
});

it("has no rule of colors ask a function: Excel calculates none there", () => {
  const page = new Page("A", "a test", [10]);
  const cell = page.put(0, 0, { value: 1 });
  const asks = ask(barometer, { altitude: cell });
  expect(() => page.alert("bad", cell, formula`IF(${cell}="",FALSE,ISERROR(${asks}))`)).toThrow("A: a rule of colors asks a function");
});
