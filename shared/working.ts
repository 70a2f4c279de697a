import { type Arg, isBlank } from "./argument";
import { type ReadShop, shopOf } from "./call";
import { type Cells, isSingle } from "./columns";
import type { Contract } from "./contract";
import { type Given, type Outline, outlineOf, readGiven } from "./given";
import { type Likely, sayLikely } from "./likely";
import { sayMeasured } from "./measured";
import { type Fault, type Said, said, sayIn, Trouble } from "./outcome";
import { type Result, shown } from "./result";
import type { Units } from "./unit";

/** How a number came about, told in the shop's units. */
export interface Working {
  /** The equation with the numbers put in. */
  readonly equation: string;
  /** What went in and what was met on the way: name and value. */
  readonly lines: readonly (readonly [name: string, value: string])[];
  readonly answer: readonly (readonly [name: string, value: string])[];
  /** What must be said beside the answer. */
  readonly beside: readonly string[];
}

/** An equation's braces, filled by whoever shows it: names for help, numbers for the working. */
const fillIn = (equation: string, say: (name: string) => string): string => equation.replace(/\{(\w+)\}/g, (_, name) => say(name));

/** The names that an equation calls in braces. */
export const namesIn = (equation: string): string[] => [...equation.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);

/** "dryWeight" as a person reads it. */
export const spaced = (name: string): string => name.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);

/** The equation in words, for help pages: "oven" alone would be the oven, and its temperature is meant. */
export const namedEquation = ({ equation, shop }: Contract): string =>
  fillIn(equation, (name) => (shop?.[name]?.kind === "temperature" ? `${spaced(name)} temperature` : spaced(name)));

function sayValue(arg: Arg | undefined, value: unknown, units: Units): string {
  if (value === undefined || value === null) return "not given";
  if (arg?.say) return arg.say(value, units);
  if (Array.isArray(value)) return `${value.length} ${value.length === 1 ? "row" : "rows"}`;
  if (typeof value === "number" && arg?.kind) return sayIn(units, said(arg.kind, value));
  return String(value);
}

const sayStep = (step: Said | string, units: Units): string => (typeof step === "string" ? step : sayIn(units, step));

/** The cells that one row of a per-piece call sees. */
export function rowOf(outline: Outline, cells: readonly (Cells | undefined)[], row: number): (Cells | undefined)[] {
  if (outline.contract.per === "call") return [...cells];
  return cells.map((own, i) => (i >= outline.args.length || !own || isSingle(own) ? own : [[own.flat()[row]]]));
}

const isRange = (likely: ReturnType<NonNullable<Contract["trust"]>>): likely is Likely => Array.isArray(likely);

/** The cells of an answer, a guess with its likely range. */
function sayAnswer(contract: Contract, given: Given, made: any, units: Units): [string, string][] {
  const returns: Result = contract.returns;
  const likely = contract.trust?.(given);
  const one = (of: Arg, value: unknown, format: string, range?: Likely): [string, string] => {
    if (value instanceof Trouble) return [of.label, value.in(units).message];
    if (typeof value === "boolean") return [of.label, value ? "yes" : "no"];
    if (typeof value !== "number") return [of.label, String(shown(of, value, units))];
    return [
      of.label,
      range ? sayLikely(of, format, value, range, units) : of.say ? of.say(value, units) : sayMeasured(of, format, value, units),
    ];
  };
  if (returns.form === "cell") return [one(returns.of, made, contract.format as string, isRange(likely) ? likely : undefined)];
  if (returns.form !== "row") return [["filled cells", `${made.length} rows`]];
  const formats = contract.format as Readonly<Record<string, string>>;
  const ranges = likely && !isRange(likely) ? likely : {};
  return Object.entries(returns.of).map(([name, of]) => one(of, made[name], formats[name], ranges[name]));
}

/** Explains one row of a call, or says what is wrong with it. */
export function explainer(readShop: ReadShop) {
  return (contract: Contract, cells: readonly (Cells | undefined)[], row = 0): Working | Fault | undefined => {
    const outline = outlineOf(contract);
    const mine = rowOf(outline, cells, row);
    if (mine.length && mine.every((own) => !own || own.every((line) => line.every(isBlank)))) return undefined;
    let units: Units | undefined;
    try {
      const shop = shopOf(outline, cells, readShop);
      units = shop.units;
      const { given, typedIn } = readGiven(outline, mine, shop);
      if (typedIn) units = { ...shop.units, weight: typedIn };
      const steps = contract.steps?.(given) ?? {};
      const values = new Map<string, string>();
      for (const [name, arg] of [...outline.args, ...outline.settings]) values.set(name, sayValue(arg, given[name], shop.units));
      for (const [name, step] of Object.entries(steps)) values.set(name, sayStep(step, shop.units));
      return {
        equation: fillIn(contract.equation, (name) => values.get(name) ?? name),
        lines: [...values].map(([name, value]) => [spaced(name), value] as const),
        answer: sayAnswer(contract, given, contract.run(given), units),
        beside: (contract.beside?.(given) ?? []).map((words) => words.in(shop.units)),
      };
    } catch (trouble) {
      if (trouble instanceof Trouble) return trouble.in(units ?? readShop(undefined).units);
      throw trouble;
    }
  };
}
