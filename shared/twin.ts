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

/**
 * A contract's formula in built-in spreadsheet syntax, for a program without the functions: cells (or numbers) by the names of
 * arguments and settings, in plain units, in; the same plain units out. Undefined where the contract has no closed formula.
 */
export function twinFormula(contract: Contract, cells: Readonly<Record<string, string>>, units: Units): string | undefined {
  const returns: Result = contract.returns;
  if (!contract.twin || returns.form !== "cell") return undefined;
  const outline = outlineOf(contract);
  const args = new Map<string, Arg>([...outline.args, ...outline.settings]);
  const formula = contract.twin.replace(/\{(\w+)\}/g, (_, name: string) => {
    const arg = args.get(name);
    const cell = cells[name];
    if (!arg || cell === undefined) throw new Error(`${contract.name}: its twin needs ${name}`);
    return arg.kind ? inward(cell, units[arg.kind]) : cell;
  });
  return returns.of.kind ? outward(formula, units[returns.of.kind]) : formula;
}
