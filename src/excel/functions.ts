import * as z from "zod/mini";
import { type Contract, parameters } from "../../shared/contract";
import type { Outcome } from "../../shared/outcome";
import { call, catalogue } from "../catalogue";
import { answerOf, blockOf, type Shown } from "./cell";

// The pane's Content-Security-Policy forbids compiling code, and trying to would be reported.
z.config({ jitless: true });

/** A fault of ours must not reach the cell as a bare error: Excel would drop its words. */
function answered(contract: Contract, handed: readonly unknown[]): Outcome[][] {
  try {
    return call(contract, handed.map(blockOf));
  } catch {
    return [
      [{ error: "#VALUE!", message: `${contract.name} failed on these arguments, which is a fault of Porewise: please report them` }],
    ];
  }
}

/** A function as Excel calls it: an argument each, null where one is left out, and the invocation last. */
export const custom = (contract: Contract) => {
  const count = parameters(contract).length;
  return (...handed: unknown[]): readonly (readonly Shown[])[] => answerOf(answered(contract, handed.slice(0, count)));
};

for (const contract of catalogue) CustomFunctions.associate(contract.name, custom(contract));
