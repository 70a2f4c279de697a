import type { Arg } from "./argument";
import type { Contract } from "./contract";
import { outlineOf } from "./given";
import type { Result } from "./result";
import type { Unit, Units } from "./unit";

const digits = (n: number): string => (n < 0 ? `(${n})` : String(n)).replace("e", "E");

const inward = (cell: string, { factor, shift }: Unit): string => {
  const shifted = shift ? `(${cell}${shift < 0 ? "" : "+"}${shift})` : cell;
  return factor === 1 ? shifted : `(${shifted}*${digits(factor)})`;
};

const outward = (formula: string, { factor, shift }: Unit): string => {
  const scaled = factor === 1 ? formula : `(${formula})/${digits(factor)}`;
  return shift ? `${scaled}${shift < 0 ? "+" : "-"}${Math.abs(shift)}` : scaled;
};

/** A formula in built-in syntax, and what its cell is. */
interface Twin {
  readonly text: string;
  readonly of: Arg;
}

/** A formula in built-in syntax that has no answer where the function has none. */
export const unless = (refused: string, formula: string): string => `IF(${refused},NA(),${formula})`;

/** The twins of a contract: one of its answer, or one a cell of the row that it gives; undefined for a cell that has none. */
export function twinsOf({ twin, returns }: Contract): (Twin | undefined)[] {
  const { form, of }: Result = returns;
  if (form === "cell") return [typeof twin === "string" ? { text: twin, of } : undefined];
  if (form !== "row" || typeof twin !== "object") return [];
  return Object.entries(of).map(([name, cell]) => (name in twin ? { text: twin[name], of: cell } : undefined));
}

/**
 * A contract's formula in built-in spreadsheet syntax, for a program without the functions: cells (or numbers) by the names of
 * arguments and settings, in plain units, in; the same plain units out. Undefined where the contract has no closed formula for that column of its answer.
 */
export function twinFormula(contract: Contract, cells: Readonly<Record<string, string>>, units: Units, column = 1): string | undefined {
  const twin = twinsOf(contract)[column - 1];
  if (!twin) return undefined;
  const outline = outlineOf(contract);
  const args = new Map<string, Arg>([...outline.args, ...outline.settings]);
  const formula = twin.text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const arg = args.get(name);
    const cell = cells[name];
    if (!arg || cell === undefined) throw new Error(`${contract.name}: its twin needs ${name}`);
    return arg.kind ? inward(cell, units[arg.kind]) : cell;
  });
  return twin.of.kind ? outward(formula, units[twin.of.kind]) : formula;
}
