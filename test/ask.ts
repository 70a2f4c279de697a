import type { Cell, Fault, Outcome } from "../shared/outcome";
import { call, catalogue } from "../src/catalogue";

export type Typed = Cell | readonly Cell[] | readonly (readonly Cell[])[];

export const cells = (typed: Typed): readonly (readonly Cell[])[] | undefined => {
  if (typed === undefined) return undefined;
  if (!Array.isArray(typed)) return [[typed as Cell]];
  return Array.isArray(typed[0]) ? (typed as Cell[][]) : (typed as Cell[]).map((cell) => [cell]);
};

/** Calls a function as a cell does. A list is a column, a list of lists a block, undefined an argument left out. */
export function spill(name: string, ...typed: Typed[]): Outcome[][] {
  const contract = catalogue.find((c) => c.name === name);
  if (!contract) throw new Error(`there is no function ${name}`);
  return call(contract, typed.map(cells));
}

/** The first cell of the answer. */
export const ask = (name: string, ...typed: Typed[]): Outcome => spill(name, ...typed)[0][0];

/** The first cell of the answer, which must be an error. */
export function fault(name: string, ...typed: Typed[]): Fault {
  const answer = ask(name, ...typed);
  if (typeof answer !== "object") throw new Error(`${name} gave ${JSON.stringify(answer)}, and an error was due`);
  return answer;
}
