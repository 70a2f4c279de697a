import { near } from "../../../within";
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
