import fc from "fast-check";
import type { Arg } from "../shared/argument";
import type { Contract } from "../shared/contract";
import { outlineOf, readGiven } from "../shared/given";
import type { Outcome } from "../shared/outcome";
import { twinFormula, twinsOf } from "../shared/twin";
import { fromInternal, plainUnits, type Units } from "../shared/unit";
import type { System } from "../shared/unittable";
import { namesIn } from "../shared/working";
import { call, catalogue, readShop } from "../src/catalogue";
import { cells, type Typed } from "./ask";

/** Every formula in built-in syntax of the catalogue, with the names that it asks for. */
export const twins = catalogue.flatMap((contract) =>
  twinsOf(contract).flatMap((twin, i) => (twin ? [{ contract, column: i + 1, wanted: [...new Set(namesIn(twin.text))] }] : [])),
);
/** How many inputs each is tried with. */
export const many = 12;

type Typeable = number | string;

/** A word of the argument's, or a number in plain units, well inside its range; near the example, where formulas are at home. */
function plausible(arg: Arg, units: ReturnType<typeof plainUnits>): fc.Arbitrary<Typeable> {
  if (arg.choices) return fc.constantFrom(...arg.choices);
  const unit = units[arg.kind!];
  const us = plainUnits("US")[arg.kind!];
  const example = typeof arg.example === "number" ? (arg.example + us.shift) * us.factor : 45_000;
  const [least, most] = arg.range ?? [example / 2, example * 2];
  const low = Math.max(least, Math.min(example * 0.6, example * 1.4));
  const high = Math.min(most, Math.max(example * 0.6, example * 1.4));
  if (arg.kind === "date") return fc.integer({ min: 40_000, max: 50_000 });
  if (arg.kind === "months") return fc.integer({ min: 0, max: 60 });
  if (arg.kind === "count") return fc.integer({ min: Math.round(low), max: Math.round(high) });
  return fc.double({ min: low, max: Math.max(low, high), noNaN: true }).map((n) => fromInternal(n, unit));
}

interface Try {
  readonly name: string;
  readonly column: number;
  readonly system: System;
  readonly values: Readonly<Record<string, Typeable>>;
  readonly formula: string;
  readonly ours: Outcome;
}

const textOf = (value: Typeable): string => (typeof value === "string" ? `"${value}"` : `(${String(value).replace("e", "E")})`);

/** The worked example in plain units; a round chamber is its inside diameter. */
function worked(contract: Contract, wanted: readonly string[], args: ReadonlyMap<string, Arg>, units: Units): Record<string, Typeable> {
  const { given } = readGiven(
    outlineOf(contract),
    contract.worked.typed.map((typed) => cells(typed as Typed)),
    readShop([[units.system]]),
  );
  return Object.fromEntries(
    wanted.map((name) => {
      const value = given[name] as number | { diameter: number } | undefined;
      // What has no value of its own, such as the barometer, takes its example: our call is given the same.
      if (value === undefined) return [name, args.get(name)!.example as Typeable];
      return [name, fromInternal(typeof value === "number" ? value : value.diameter, units[args.get(name)!.kind!])];
    }),
  );
}

/** Two gauge readings that one chamber can show, the later one often the smaller. */
const readings = (drawn: Record<string, Typeable>): Record<string, Typeable> => {
  const [barometer, before, after] = [drawn.barometer, drawn.before, drawn.after].map(Number);
  return { ...drawn, before: 0.9 * barometer, after: (0.85 * barometer * after) / before };
};

/** Random inputs, on some of which our function has no answer, with the twin's formula for them. */
export function tries(): Try[] {
  return twins.flatMap(({ contract, column, wanted }) =>
    (["US", "SI"] as const).flatMap((system) => {
      const units = plainUnits(system);
      const outline = outlineOf(contract);
      const args = new Map<string, Arg>([...outline.args, ...outline.settings]);
      if (system === "SI" && !contract.shop) return [];
      const record = fc.record(Object.fromEntries(wanted.map((name) => [name, plausible(args.get(name)!, units)])));
      const found: Try[] = [];
      const example = system === "US" ? [worked(contract, wanted, args, units)] : [];
      for (const drawn of [...example, ...fc.sample(record, { numRuns: many * 12, seed: 20260314 })]) {
        const values = contract.name === "LEAK" ? readings(drawn) : drawn;
        if (found.length > many) break;
        const shop = [
          ["units", system],
          ...outline.settings.filter(([name]) => name in values).map(([name, setting]) => [setting.name, values[name]]),
        ];
        const typed = [
          ...outline.args.map(([name, arg], i) =>
            name in values ? [[values[name]]] : arg.optional ? undefined : cells(contract.worked.typed[i] as Typed),
          ),
          ...(contract.shop ? [shop] : []),
        ];
        // An answer that cannot be given is one error, however many cells the row has.
        const [row] = call(contract, typed as never);
        const ours = row[column - 1] ?? row[0];
        const text = Object.fromEntries(wanted.map((name) => [name, textOf(values[name])]));
        found.push({ name: contract.name, column, system, values, formula: twinFormula(contract, text, units, column)!, ours });
      }
      return found;
    }),
  );
}
