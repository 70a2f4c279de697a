import { near } from "../../../within";
import { calculated } from "../calculated";
import { filled } from "../filled";

const price = filled("Price Tag");
const number = (label: string, column = 1) => price.beside(label, column) as number;

it("adds the lines up and shares them over the good pieces", () => {
  near(number("total"), 1.25 * 24.5 + 0.005 + 7.5 + 0.6 + 0.36 + 22 + 0.41 - 0.005, 1e-3);
  near(number("cost of one good piece"), number("total") / 18);
});

it("sets margin and markup side by side: the same share, two prices", () => {
  const cost = number("cost of one good piece");
  near(number("price to charge"), cost / 0.5, 1e-2);
  near(number("price to charge", 2), cost * 1.5, 1e-2);
  expect([number("as a margin on the price"), number("as a markup on the cost")]).toEqual([0.5, 1]);
  near(number("as a margin on the price", 2), 1 / 3);
});

it("splits the total by weight to the cent", () => {
  const shares = price.under("share", 3) as number[];
  near(
    shares.reduce((a, b) => a + b),
    number("total"),
  );
  near(shares[0], (number("total") * 8) / 18, 1e-3);
});

it("says in words why there is no cost", () =>
  expect(filled("Price Tag", { "Price Tag": { "of them spoiled": 20 } }).beside("cost of one good piece", 3)).toMatch(
    /^no good piece is left/,
  ));

describe.each(["live", "plain"] as const)("what makes no sense gives no price, %s", (edition) => {
  const typed = (typing: Record<string, number>) => {
    const { whole, rows } = filled("Price Tag", { "Price Tag": typing });
    const cached = calculated(
      `US demo${edition === "plain" ? " plain" : ""}`,
      edition === "live" ? whole : { ...whole, live: () => whole.plain },
    );
    return (label: string, column = 1) => cached.value("Price Tag", rows(label)[0], column);
  };

  it.each([1, 50, -0.1])("a margin of %s", (margin) => {
    const beside = typed({ "margin, and the same as a markup": margin });
    for (const label of ["price to charge", "as a margin on the price", "as a markup on the cost"])
      expect([beside(label), beside(label, 2)]).toEqual(["–", "–"]);
    expect(beside("left over from a piece")).toBe("");
    expect(beside("margin, and the same as a markup", 3)).toMatch(/^not from 0 to 0\.9999/);
  });

  it.each([20, 25])("%i spoiled of 20", (spoiled) => {
    const beside = typed({ "of them spoiled": spoiled });
    expect(beside("cost of one good piece")).toBe("–");
    expect(beside("cost of one good piece", 3)).toMatch(/^no good piece is left/);
    expect(beside("price to charge")).toBe("");
  });

  it("and what does, gives one", () =>
    near(typed({ "of them spoiled": 0 })("price to charge") as number, (price.beside("total") as number) / 10, 2e-3));
});
