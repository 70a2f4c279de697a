import type { Outcome } from "../../../shared/outcome";
import { plainUnits } from "../../../shared/unit";
import { bake } from "../../../src/cure/bake";
import { uptake } from "../../../src/resin/uptake";
import { ask } from "../../../src/workbook/formula";
import { live } from "../../../src/workbook/live";
import { Page } from "../../../src/workbook/page";
import { refTo } from "../../../src/workbook/place";
import { plain } from "../../../src/workbook/plain";
import { sheetTable } from "../../../src/workbook/sheettable";
import { shownCells } from "../../../src/workbook/shown";

const oven = refTo("A", 0, 9);
const editions = {
  live: live(refTo("My Shop", 0, 0, 9, 2)),
  plain: plain({ units: plainUnits("US"), setting: () => oven, standard: () => 0 }),
};

/** Two rows of which the second is refused, and their bake; D is the gap between what is typed and what is worked out. */
function table(room = 40) {
  const page = new Page("A", "a test", [10, 10, 10, 3, room, 10]);
  sheetTable(
    page,
    {
      solids: { title: "solids", input: true },
      gravity: { title: "gravity", input: true },
      moisture: { title: "moisture", input: true },
      uptake: { title: "uptake", spills: (all) => ask(uptake, { solids: all.solids, gravity: all.gravity, moisture: all.moisture }) },
      bake: { title: "bake", spills: (all) => ask(bake, { thickness: all.solids }) },
    },
    [
      { solids: 2, gravity: 0.45 },
      { solids: 3, gravity: 0.45, moisture: 0.4 },
    ],
    { spare: 1 },
  );
  return page.sheet;
}

const values: Readonly<Record<string, Outcome>> = {
  "2,4": 0.015,
  "3,4": { error: "#N/A", message: "the wood is too wet to take resin: dry it first" },
  "4,4": "",
  "2,5": 40,
  "3,5": 60,
  "4,5": "",
};
const cached = { value: (_: string, row: number, column: number) => values[`${row},${column}`], spill: () => ({ rows: 3, columns: 1 }) };

describe("with the functions", () => {
  const shown = shownCells(table(), editions.live, cached);

  it("one formula fills the column, and each cell keeps what it had", () => {
    expect(shown.get("2,4")).toMatchObject({
      formula: expect.stringContaining("_xldudf_PORE_UPTAKE(A3:A5,B3:B5,,C3:C5,"),
      spill: { rows: 3 },
    });
    expect(shown.get("3,4")).toMatchObject({ value: values["3,4"] });
    expect(shown.get("3,4")?.formula).toBeUndefined();
  });
});

describe("without them", () => {
  const shown = shownCells(table(), editions.plain, cached);

  it("each row has its twin, empty where the row is", () => {
    expect(shown.get("2,4")?.formula).toMatch(/^IF\(AND\(A3="",B3=""\),"",IFERROR\(.*,"–"\)\)$/);
    expect(shown.get("4,4")).toMatchObject({ value: "", formula: expect.stringMatching(/^IF\(AND\(A5="",B5=""\)/) });
  });

  it("a refusal is said in words for as long as the cells hold what was refused", () =>
    expect(shown.get("3,4")).toMatchObject({
      value: "the wood is too wet to take resin: dry it first",
      refused: true,
      formula: expect.stringMatching(/^IF\(IFERROR\(AND\(\$A\$4=3,\$B\$4=0.45,\$C\$4=0.4,.*\),FALSE\),"the wood is too wet/),
    }));

  it("a dash stands for it where words have no room", () =>
    expect(shownCells(table(10), editions.plain, cached).get("3,4")).toMatchObject({
      value: "–",
      refused: true,
      formula: expect.stringMatching(/^IF\(.*,FALSE\),"–",/),
    }));

  it("what has no twin is the value of the day, gone once what it answers has changed, the settings too", () => {
    const frozen = shown.get("2,5");
    expect(frozen).toMatchObject({ value: 40, frozen: true });
    expect(frozen?.formula).toMatch(/^IF\(IFERROR\(AND\(\$A\$3=2,.*\$J\$1.*\),FALSE\),40,"needs add-in"\)$/);
  });
});
