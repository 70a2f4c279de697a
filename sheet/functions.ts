import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Arg } from "../shared/argument";
import type { Cells } from "../shared/columns";
import { type Contract, parameters } from "../shared/contract";
import type { Outcome } from "../shared/outcome";
import type { Result } from "../shared/result";
import { plainUnits } from "../shared/unit";
import { call, catalogue, cellName } from "../src/catalogue";
import { cellsOf, resultsOf } from "./cell";

/** The parts of o-spreadsheet that take functions in: a module in Node, a global in the page. */
export type Engine = Pick<typeof OSpreadsheet, "addFunction" | "helpers" | "registries">;

/** One call that a formula made. */
export interface Made {
  readonly contract: Contract;
  readonly cells: readonly (Cells | undefined)[];
  readonly answer: readonly (readonly Outcome[])[];
}

const us = plainUnits("US");
const si = plainUnits("SI");

/** What a plain number is taken for: "in, or mm under SI". */
function unitWords({ kind }: Arg): string | undefined {
  if (!kind || !us[kind].name) return undefined;
  return us[kind].name === si[kind].name ? us[kind].name : `${us[kind].name}, or ${si[kind].name} under SI`;
}

const exampleWords = (example: unknown) => (typeof example === "number" || typeof example === "string" ? `such as ${example}` : undefined);

/** The help of one argument, as it shows while a formula is typed. */
const argumentHelp = (arg: Arg): string => [arg.label, unitWords(arg), exampleWords(arg.example)].filter(Boolean).join("; ");

const proposals = (name: string, arg: Arg) => (name === "shop" ? ["US", "SI"] : (arg.choices ?? [])).map((value) => ({ value }));

/** The number format of each column of an answer. */
function formats({ format, returns }: Contract): (column: number) => string | undefined {
  const known = (text: string | undefined) => (text === "General" ? undefined : text);
  if (typeof format === "string") return () => known(format);
  const { of } = returns as Extract<Result, { form: "row" | "table" }>;
  const names = Object.keys(of);
  return (column) => known(format[names[column]]);
}

let hears: Made[] | undefined;

/** Runs some work and tells its result with the calls that formulas made meanwhile, the outermost last. */
export function heard<T>(work: () => T): { readonly result: T; readonly calls: readonly Made[] } {
  const calls: Made[] = [];
  hears = calls;
  try {
    return { result: work(), calls };
  } finally {
    hears = undefined;
  }
}

/** Makes every function of the catalogue known to the engine. */
export function register({ addFunction, helpers, registries }: Engine): void {
  // The engine would take this code for plain text, and IFERROR would pass it by.
  registries.errorTypes.add("#VALUE!");
  for (const contract of catalogue) {
    const formatOf = formats(contract);
    const required = parameters(contract).filter(([, { optional }]) => !optional).length;
    addFunction(cellName(contract), {
      description: contract.asks,
      category: "Porewise",
      isExported: true,
      // "any, range" takes a cell, a range and an array constant alike, and errors among them.
      args: parameters(contract).map(([name, arg]) =>
        helpers.arg(`${name} (any, range${arg.optional ? ", optional" : ""})`, argumentHelp(arg), proposals(name, arg)),
      ),
      compute: (...args) => {
        const cells = args.map(cellsOf);
        const answer = call(contract, cells);
        hears?.push({ contract, cells, answer });
        return resultsOf(answer, formatOf);
      },
    });
    // The engine would count arguments in its own words: the function itself names what is missing beside the first.
    Object.assign(registries.functionRegistry.content[cellName(contract)], { minArgRequired: Math.min(1, required) });
  }
}
