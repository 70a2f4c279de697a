import * as z from "zod/mini";
import { type Contract, parameters } from "../../shared/contract";
import type { Outcome } from "../../shared/outcome";
import { call, catalogue } from "../catalogue";
import { versionText } from "../version";
import { answerOf, blockOf, type Shown } from "./cell";
import { LastCalls } from "./lastcall";
import { trimmed } from "./wholecolumns";

// The pane's Content-Security-Policy forbids compiling code, and trying to would be reported.
z.config({ jitless: true });

declare global {
  /** What the functions' script hands to the pane's, which lives in the same page. */
  var porewise: { readonly calls: LastCalls; readonly version: string } | undefined;
}

type Invocation = Partial<CustomFunctions.Invocation>;

const calls = new LastCalls();
globalThis.porewise = { calls, version: versionText };

/** A fault of ours must not reach the cell as a bare error: Excel would drop its words. */
function answered(contract: Contract, handed: readonly unknown[], invocation: Invocation | undefined): Outcome[][] {
  try {
    const cells = trimmed(handed).map(blockOf);
    const answer = call(contract, cells);
    // A preview while a formula is being typed is no cell's answer.
    if (invocation?.address && !invocation.isInValuePreview) calls.record(invocation.address, { name: contract.name, cells, answer });
    return answer;
  } catch {
    return [
      [{ error: "#VALUE!", message: `${contract.name} failed on these arguments, which is a fault of Porewise: please report them` }],
    ];
  }
}

/** A function as Excel calls it: an argument each, null where one is left out, and the invocation last. */
export const custom = (contract: Contract) => {
  const count = parameters(contract).length;
  return (...handed: unknown[]): readonly (readonly Shown[])[] =>
    answerOf(answered(contract, handed.slice(0, count), handed[count] as Invocation | undefined));
};

for (const contract of catalogue) CustomFunctions.associate(contract.name, custom(contract));
