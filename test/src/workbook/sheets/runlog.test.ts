import { near } from "../../../within";
import { calculated } from "../calculated";
import { filled } from "../filled";

const log = filled("Run Log");
const mean = (values: number[]) => values.reduce((a, b) => a + b) / values.length;

it("tells gain, fullness and bake loss of each run", () => {
  const [dry, drained, cured] = ["dry", "drained", "cured"].map((title) => log.under(title, 8) as number[]);
  log.under("gain", 8).forEach((gain, i) => {
    near(gain, cured[i] / dry[i] - 1);
  });
  log.under("bake loss", 8).forEach((loss, i) => {
    near(loss, (drained[i] - cured[i]) / (drained[i] - dry[i]));
  });
  expect(Math.round(100 * (log.under("fullness", 1)[0] as number))).toBe(57);
});

it("tells what is usual for a wood: the mean of its runs", () => {
  expect(log.under("usual for", 1)).toEqual(["boxelder"]);
  const woods = log.under("wood", 8);
  for (const title of ["gain", "fullness", "bake loss"]) {
    const own = (log.under(title, 8) as number[]).filter((_, i) => woods[i] === "boxelder");
    near(log.under(title, 1, 1)[0], mean(own));
  }
  expect(log.under("runs", 5)).toEqual([3, 1, 2, 1, 1]);
});

it("asks for three weights, gauge, minutes, soak, dye, oven and a result, and for woods of the list", () => {
  expect(log.texts).toEqual(expect.arrayContaining(["dry", "drained", "cured", "gauge", "bubbled", "soak", "dye", "oven", "result"]));
  expect(log.validations.filter(({ type }) => type === "list").map(({ range }) => range[0])).toEqual(["B", "T"]);
});

describe.each(["live", "plain"] as const)("weights in the wrong order, %s", (edition) => {
  const swapped = (first: string, second: string) => {
    const { whole, sheet } = filled("Run Log");
    const at = (title: string) => {
      const [place] = [...sheet.cells].find(([, { value, look }]) => value === title && look === "heading")!;
      return place.split(",").map(Number) as [number, number];
    };
    const [[row, one], [, other]] = [at(first), at(second)];
    const [a, b] = [`${row + 1},${one}`, `${row + 1},${other}`];
    const [cellA, cellB] = [sheet.cells.get(a)!, sheet.cells.get(b)!];
    sheet.cells.set(a, { ...cellA, value: cellB.value }).set(b, { ...cellB, value: cellA.value });
    const cached = calculated(
      `US demo${edition === "plain" ? " plain" : ""}`,
      edition === "live" ? whole : { ...whole, live: () => whole.plain },
    );
    return ["gain", "fullness", "bake loss"].map((title) => typeof cached.value("Run Log", row + 1, at(title)[1]));
  };

  it("give no number that could be copied", () => {
    expect(swapped("dry", "drained")).not.toContain("number");
    expect(swapped("dry", "cured")[0]).not.toBe("number");
    expect(swapped("drained", "cured")[2]).not.toBe("number");
  });

  it("leave what they do not spoil", () => expect(swapped("drained", "cured")[0]).toBe("number"));
});

it("marks them red", () => expect(log.sheet.alerts.map(({ as, over }) => `${as} ${over.columns}`)).toEqual(["bad 3", "bad 1"]));
