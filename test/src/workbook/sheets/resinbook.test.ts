import { near } from "../../../within";
import { filled } from "../filled";

const book = filled("Resin Book");

it("tells what is in the tub after each run, and until when", () => {
  near(book.beside("in the tub now"), 1.5 + 2 + 1 + 1 - 0.45 - 0.5 - 0.6 - 0.35);
  expect(book.beside("use by")).toBe(46125);
  near(book.beside("its dye rate"), 0.25);
});

it.each([
  [46095, "good on the day of the demo"],
  [46126, "expired: dispose of it"],
  [undefined, "give the day of the demo on Today"],
])("on day %s it says “%s”", (day, words) =>
  expect(filled("Resin Book", { Today: { "it begins": day } }).beside("use by", 3)).toMatch(new RegExp(`^${words}`)),
);

it("marks what is expired, in the summary and in the ledger", () => {
  expect(book.alerts("use by")[0]).toMatch(/^bad: IF\(ISNUMBER.*Today/);
  expect(book.sheet.alerts.filter(({ as }) => as === "bad")).toHaveLength(2);
});

it("opens empty, and says nothing then", () => {
  const empty = filled("Resin Book", {}, "SI", "empty");
  expect([empty.beside("in the tub now"), empty.beside("use by", 3)]).toEqual(["", ""]);
});
