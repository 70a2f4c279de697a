import { ask } from "../../../ask";
import { near } from "../../../within";
import { calculated } from "../calculated";
import { filled } from "../filled";

const book = filled("Resin Book");

it("tells what is in the tub after each run, and until when", () => {
  near(book.beside("in the tub now"), 1.5 + 2 + 1 + 1 - 0.45 - 0.5 - 0.6 - 0.35);
  expect(book.beside("use by")).toBe(46125);
  near(book.beside("its dye rate"), 0.25);
});

it.each([
  [46095, "still good on Today’s day"],
  [46126, "expired: dispose of it"],
  [undefined, "type a day on Today"],
])("on day %s it says “%s”", (day, words) =>
  expect(filled("Resin Book", { Today: { "day and hour": day } }).beside("use by", 3)).toMatch(new RegExp(`^${words}`)),
);

it("marks what is expired, in the summary and in the ledger", () => {
  expect(book.alerts("use by")[0]).toMatch(/^bad: IF\(COUNT.*Today/);
  expect(book.sheet.alerts.filter(({ as }) => as === "bad")).toHaveLength(4);
});

it("opens empty, and says nothing then", () => {
  const empty = filled("Resin Book", {}, "SI", "empty");
  expect([empty.beside("in the tub now"), empty.beside("use by", 3)]).toEqual(["", ""]);
});

it("is what My Shop has on hand, its dye rate and its date, until somebody types over them", () => {
  const since = book.beside("oldest part mixed") as number;
  expect(ask("EXPIRY", since)).toBe(book.beside("use by"));
  const mine = filled("My Shop");
  for (const [label, setting] of [
    ["in the tub now", "resin on hand"],
    ["its dye rate", "resin dye rate"],
    ["oldest part mixed", "resin mixed on"],
  ] as const)
    expect(mine.beside(setting)).toBe(book.beside(label));
  expect(filled("My Shop", { "My Shop": { "resin on hand": 1 } }).beside("resin on hand")).toBe(1);
  expect(filled("My Shop", {}, "US", "empty").beside("resin on hand")).toBe("");
});

it("says no more than that where the day of the demo is no day", () =>
  expect(filled("Resin Book", { Today: { "day and hour": "some day" } }).beside("use by", 3)).toMatch(/^type a day on Today/));

const firstRow = (sight: typeof book) => {
  const [at] = [...sight.sheet.cells].find(([, { value, look }]) => value === "date" && look === "heading")!;
  return Number(at.split(",")[0]) + 1;
};

/** The book in built-in formulas alone, with cells of its ledger changed, as the engine calculates it. */
function changed(edition: "live" | "plain", changes: Record<string, string | number | undefined>) {
  const sight = filled("Resin Book");
  const top = firstRow(sight);
  for (const [at, value] of Object.entries(changes)) {
    const [row, column] = at.split(",").map(Number);
    const place = `${top + row},${column}`;
    sight.sheet.cells.set(place, { ...sight.sheet.cells.get(place), value });
  }
  const { whole } = sight;
  const cached = calculated(
    `US demo${edition === "plain" ? " plain" : ""}`,
    edition === "live" ? whole : { ...whole, live: () => whole.plain },
  );
  const value = (row: number, column: number) => cached.value("Resin Book", row, column);
  const beside = (label: string, column = 1) => value(sight.rows(label)[0], column);
  return { beside, ledger: (row: number, column: number) => value(top + row, column) };
}

describe.each(["live", "plain"] as const)("a slip in the ledger, %s", (edition) => {
  it("a row without a date stops the book, in words", () => {
    const { beside, ledger } = changed(edition, { "2,0": undefined });
    expect(ledger(2, 9)).toBe("give this row a date");
    expect(ledger(4, 9)).toMatch(/a row above is wrong/);
    expect([beside("in the tub now"), beside("use by"), beside("oldest part mixed")]).toEqual(["", "", ""]);
    expect(beside("in the tub now", 3)).toMatch(/see its “problem”/);
  });

  it("no more leaves than stood there", () => {
    const { beside, ledger } = changed(edition, { "4,3": 50 });
    expect(ledger(4, 9)).toMatch(/^more left than was there/);
    expect(beside("in the tub now")).toBe("");
  });

  it("an empty row in between changes nothing", () => {
    const { beside, ledger } = changed(edition, { "2,0": undefined, "2,1": undefined, "2,2": undefined, "2,3": undefined });
    near(beside("in the tub now") as number, 4.1);
    expect([ledger(2, 5), ledger(2, 9)]).toEqual(["", ""]);
    expect(beside("use by")).toBe(book.beside("use by"));
    near(beside("its dye rate") as number, 0.25);
  });

  it("an emptied tub starts afresh", () => {
    const { beside } = changed(edition, { "3,3": "emptied" });
    near(beside("in the tub now") as number, 0.65);
  });
});
