import { settings } from "../../../../src/shop";
import { ofKey } from "../../../../src/workbook/place";
import { filled } from "../filled";

type Value = string | number;

const shop = filled("My Shop");
const { whole, rows, beside } = shop;
const range = whole.book.names.find(({ name }) => name === "MyShop")!.ref;
const settingRows = settings.map(({ name }) => ({ name, row: rows(name).find((row) => row >= range.row)! }));

it("puts eight settings first, in one group", () => {
  const firstEight = [...settingRows].sort((a, b) => a.row - b.row).slice(0, 8);
  expect(firstEight.map(({ row }) => row - firstEight[0].row)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  expect(firstEight[7].row + 1).toBe(rows("Wood")[0]);
  expect(firstEight.map(({ name }) => name)).toEqual(expect.arrayContaining(["units", "scale reads", "cover", "fullness", "altitude"]));
});

it("gives every setting what it is, its range and where that comes from, within the range that formulas read", () => {
  for (const { row } of settingRows) {
    expect(row).toBeGreaterThan(range.row);
    expect(row).toBeLessThan(range.row + range.rows);
    for (const column of [3, 5, 6]) expect(shop.value(row, column)).not.toBe("");
  }
});

it("lets one choose from lists and warns outside ranges", () => {
  const of = (name: string) => `B${settingRows.find((one) => one.name === name)!.row + 1}`;
  const ruleOf = (name: string) => shop.validations.find(({ range }) => range === of(name));
  expect(ruleOf("in the oven")).toMatchObject({ type: "list", errorStyle: "stop", values: ["foil", "spaced", "fan"] });
  expect(ruleOf("fullness")).toMatchObject({
    type: "custom",
    formula1: expect.stringMatching(/^IF\(ISNUMBER\(B\d+\),AND\(B\d+>=0,B\d+<=1\.05\)/),
    errorStyle: "warning",
  });
});

it("refuses a thin lid in words and marks it, and never approves one", () => {
  expect(beside("lid check")).toBe("not ruled out (this is no approval)");
  expect(filled("My Shop", { "My Shop": { lid: 0.25 } }).beside("lid check")).toMatch(/^do not pump/);
  expect(shop.alerts("lid check")).toEqual([expect.stringMatching(/^bad: LEFT\(.*"do not pump"$/)]);
});

it("marks resin on hand of which nobody knows the age", () => {
  const said = (given: Record<string, string | number>) => filled("My Shop", { "My Shop": given }).beside("resin mixed on", 3);
  expect(said({ "resin on hand": 1, "resin mixed on": "" })).toMatch(/the resin on hand has no date$/);
  expect(said({ "resin on hand": 1, "resin mixed on": 46000 })).toMatch(/^day the oldest part/);
  expect(said({ "resin on hand": 0, "resin mixed on": "" })).toMatch(/^day the oldest part/);
  expect(shop.alerts("resin mixed on")).toContainEqual(expect.stringMatching(/^bad: AND\(SUM/));
});

const wrong = {
  fullness: 55,
  barometer: "n/a",
  "packet makes": 0,
  "in the oven": "wrapped",
  "resin mixed on": "last week",
  chamber: "12 in",
};

it.each(Object.entries(wrong))("says what to type where %s is %s", (name, value) => {
  const mine = filled("My Shop", { "My Shop": { [name]: value } });
  expect(mine.beside(name, 3)).toMatch(/^type /);
  expect(mine.value(1, 0)).toBe(`“${name}” on My Shop is wrong or missing: ${mine.beside(name, 3)}.`);
  expect(shop.value(1, 0)).toMatch(/^The facts/);
});

it("one bad setting is named on every sheet, and nothing else is said of what follows", () => {
  const blanks = filled("Blanks", { "My Shop": { oven: 5000, room: 60 } });
  const says = /^“oven” on My Shop is wrong or missing: type a plain number from /;
  for (const sheet of ["My Shop", "Blanks", "Today", "Loads", "Price Tag", "Resin Book", "Supplies", "Run Log"])
    expect([sheet, blanks.shown(sheet, 1, 0)]).toEqual([sheet, expect.stringMatching(says)]);
  expect(blanks.under("problem", 9).filter(Boolean)).toEqual([]);
});

/** Every sentence on the sheets but My Shop and the labels. */
function sentences(given: Record<string, Value>): Set<string> {
  const { whole, shown } = filled("Blanks", { "My Shop": given });
  const said = new Set<string>();
  for (const { name, cells } of whole.book.sheets) {
    if (name === "My Shop" || name === "Labels") continue;
    for (const at of cells.keys()) {
      const text = shown(name, ...ofKey(at));
      if (typeof text === "string" && / .* /.test(text)) said.add(text);
    }
  }
  return said;
}

/** What a value says of itself, and what has no answer then. */
const follows = /^“|No numbers until My Shop is right|^No plan: see the lines above|^For square pieces|^5\. |left out: dry it first/;

it.each<Record<string, Value>>([
  { "dry enough": 9 },
  { tub: "wide" },
  { "days off": "whenever" },
  { "unmixed months": 1e6 },
  { "lid limit": 50 },
  { "resin mixed on": "last week" },
  { oven: 5000, room: 9999 },
])("gives no other reason on any sheet for what follows from %j", (given) => {
  const before = sentences({});
  const said = [...sentences(given)].filter((text) => !before.has(text));
  expect(said.filter((text) => !follows.test(text))).toEqual([]);
  const [first] = said.filter((text) => text.startsWith("“"));
  expect(first).toMatch(/^“.*” on My Shop is wrong or missing: type /);
  expect(/ \d more on My Shop, marked there\.$/.test(first)).toBe(Object.keys(given).length > 1);
});

it("names no material for the lid by itself", () => {
  expect(filled("My Shop", { "My Shop": { material: "" } }).beside("lid check")).toBe("do not pump: choose what it is made of");
  expect(filled("Today", { "My Shop": { material: "" } }).value(1, 0)).toMatch(
    /^Do not pump, for the lid on My Shop: choose what it is made of/,
  );
});

it.each([
  ["units", "SI"],
  ["scale reads", "oz"],
])("says so where %s are not those of the file", (name, other) => {
  expect(beside(name, 3)).not.toMatch(/type/);
  expect(filled("My Shop", { "My Shop": { [name]: other } }).beside(name, 3)).toMatch(/^type .*: this file is made for it$/);
});
