import { isFault } from "../../shared/outcome";
import { evaluator } from "../../sheet/engine";
import { tries, twins } from "../tries";
import { near } from "../within";

/** Plain formulas answer and refuse as their functions do: here in the page's engine, in LibreOffice by a judge. */
const all = tries();
const evaluate = evaluator();

it.each(twins.map(({ contract: { name }, column }) => ({ name, column })))(
  "$name, column $column, refuses what the function refuses",
  ({ name, column }) => {
    for (const { formula, ours, values } of all.filter((one) => one.name === name && one.column === column)) {
      const { value } = evaluate(formula);
      if (isFault(ours)) expect({ values, formula, refused: isFault(value) }).toEqual({ values, formula, refused: true });
      else if (typeof ours === "number") near(value as number, ours, 1e-9);
      else expect({ formula, value }).toEqual({ formula, value: ours });
    }
  },
);

it("some are refused, so that the rule above holds something", () =>
  expect(all.filter(({ ours }) => isFault(ours)).length).toBeGreaterThan(10));
