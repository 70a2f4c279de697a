import { filled } from "../filled";

const supplies = filled("Supplies");

it("tells what is expired or will be soon", () =>
  expect(supplies.under("state", 7)).toEqual(["good", "good", "expired", "good", "good", "use it soon", "good"]));

it("asks for a day where it has none, and shows no error", () => {
  const undated = filled("Supplies", { Today: { "it begins": undefined } });
  expect(undated.under("days left", 3)).toEqual(["", "", ""]);
  expect(undated.under("state", 1)).toEqual(["give the day above"]);
  expect(undated.beside("as of", 3)).toMatch(/^type a day/);
});

it("buys what the planned loads need beyond what is good", () => {
  expect([1, 2, 3].map((column) => supplies.beside("catalyst", column))).toEqual([6, 2, 4]);
  expect([1, 2, 3].map((column) => supplies.beside("resin to mix", column))).toEqual([6, 2.5, 3.5]);
});

it("marks and lists", () => {
  expect(supplies.sheet.alerts.map(({ as }) => as)).toEqual(["bad", "attention"]);
  expect(supplies.validations).toContainEqual(
    expect.objectContaining({ type: "list", values: ["resin", "catalyst", "dye", "foil", "other"] }),
  );
});
