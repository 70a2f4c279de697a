import { isFault } from "../../../shared/outcome";
import { evaluator } from "../../../sheet/engine";
import { catalogue, cellName } from "../../../src/catalogue";
import { lineToSend, steps } from "../../../src/help/firstexcel";

/** Formulas that a step has a person type, and what it says is seen then. */
const typed = steps.flatMap(({ act, see }) => [...act.matchAll(/`(=PORE[^`]*)`/g)].map(([, formula]) => ({ formula, see })));
const answer = evaluator();
const asked = (formula: string) => answer(formula.replace("C1:C3", "{104;90;80}").replace("D1:D3", "{93;93;70}"));

it("has ten steps, and a line to send with a place for each", () => {
  expect(steps).toHaveLength(10);
  expect(lineToSend.match(/\d+: _/g)).toHaveLength(10);
});

it.each(typed)("$formula gives what its step says", ({ formula, see }) => {
  const cells = [asked(formula).value].flat(2);
  for (const cell of cells) {
    if (!isFault(cell)) expect(see).toContain(typeof cell === "number" ? String(cell).slice(0, 5) : String(cell));
    else expect(see).toContain(cell.error);
  }
  const [one] = cells;
  if (isFault(one)) expect(one.message.startsWith(/“([^”]*)”/.exec(see)![1])).toBe(true);
});

it("names a function by its own question", () =>
  expect(steps[5].act).toContain(catalogue.find((one) => cellName(one) === "PORE.FILL")!.asks));
