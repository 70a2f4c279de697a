import { calculated } from "../calculated";
import { filled } from "../filled";

const supplies = filled("Supplies");

it("tells what is expired or will be soon", () =>
  expect(supplies.under("state", 7)).toEqual([
    ...["still good", "still good", "expired"],
    ...["still good", "still good", "use it soon", "still good"],
  ]));

it("asks for a day where it has none, and shows no error", () => {
  const undated = filled("Supplies", { Today: { "day and hour": undefined } });
  expect(undated.under("days left", 3)).toEqual(["", "", ""]);
  expect(undated.under("state", 1)).toEqual(["give the day above"]);
  expect(undated.beside("as of", 3)).toMatch(/^type a date/);
});

it("buys what the planned loads need beyond what is good", () => {
  for (const label of ["catalyst", "resin to mix"]) {
    const [need, good, buy] = [1, 2, 3].map((column) => supplies.beside(label, column) as number);
    expect(need).toBeGreaterThan(0);
    expect(buy).toBeCloseTo(Math.max(0, need - good), 9);
  }
  expect(filled("Supplies", { "My Shop": { "resin on hand": "" } }).beside("resin to mix", 3)).toBeGreaterThan(0);
});

it("names the day over the states, and marks a day before something was opened", () => {
  const day = supplies.beside("as of") as number;
  const [at] = [...supplies.sheet.cells].find(([, { value }]) => value === "state")!;
  const [row, column] = at.split(",").map(Number);
  expect(supplies.value(row - 1, column)).toBe(day);
  expect(supplies.beside("as of", 3)).toMatch(/^the sample's day/);
  const old = filled("Supplies", { Today: { "day and hour": day - 30 } });
  expect(old.beside("as of", 3)).toMatch(/^before something below was opened: type today's date/);
  expect(old.alerts("as of")).toEqual([expect.stringMatching(/^bad: .*COUNTIF/)]);
});

it("shows no error where the day of the demo is no day", () =>
  expect(filled("Supplies", { Today: { "day and hour": "some day" } }).beside("as of", 3)).toMatch(/^type a date here/));

it.each(["US", "SI"] as const)("in %s, does not count what is in another unit, and says in which it counts", (system) => {
  const [fluid, other, second] = system === "US" ? ["qt", "gal", 1] : ["L", "ml", 0.9];
  const typed = filled("Supplies", {}, system);
  const { sheet } = typed;
  const [at] = [...sheet.cells].find(([, { value }]) => value === "resin, first can")!;
  const row = Number(at.split(",")[0]);
  sheet.cells.set(`${row},3`, { ...sheet.cells.get(`${row},3`), value: other });
  const cached = calculated(`${system} demo`, typed.whole);
  expect(typed.value(row, 9)).toBe("still good");
  expect(cached.value("Supplies", row, 9)).toBe(`count it in ${fluid}`);
  const [line] = typed.rows("resin to mix");
  expect(cached.value("Supplies", line, 2)).toBe(second);
});

it("says “no plan” where the plan fails, and not that nothing is needed", () => {
  const without = filled("Supplies", { "My Shop": { "dry enough": 40 } });
  for (const name of ["resin to mix", "catalyst", "dye", "foil"])
    expect([1, 3].map((column) => without.value(without.rows(name).at(-1)!, column))).toEqual(["no plan", "no plan"]);
  const empty = filled("Supplies", {}, "US", "empty");
  expect([1, 3].map((column) => empty.beside("catalyst", column))).toEqual([0, 0]);
});

it.each([
  ["type a plain number", { 2: "1.5 qt" }],
  ["of which kind?", { 1: undefined }],
  ["good for how long?", { 5: undefined }],
])("says “%s” of a line that it cannot count", (words, typed) => {
  const asked = filled("Supplies", { Supplies: { "resin, first can": typed } });
  expect(asked.beside("resin, first can", 9)).toBe(words);
  expect(asked.beside("resin to mix", 2)).toBe(1);
});

it("asks when a thing was opened", () => {
  const [row] = supplies.rows("foil");
  expect(supplies.value(row, 4)).toBeGreaterThan(40000);
  const { sheet } = supplies;
  const key = `${row},4`;
  const kept = sheet.cells.get(key)!;
  sheet.cells.set(key, { ...kept, value: undefined });
  expect(calculated("US demo", supplies.whole).value("Supplies", row, 9)).toBe("when opened?");
  sheet.cells.set(key, kept);
});

it("marks and lists", () => {
  expect(supplies.sheet.alerts.map(({ as }) => as)).toEqual(["bad", "bad", "bad", "attention", "bad", "bad"]);
  expect(supplies.validations).toContainEqual(
    expect.objectContaining({ type: "list", values: ["resin", "catalyst", "dye", "foil", "other"] }),
  );
});
