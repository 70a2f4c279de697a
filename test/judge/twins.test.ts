import fc from "fast-check";
import type { Arg } from "../../shared/argument";
import type { Contract } from "../../shared/contract";
import { outlineOf, readGiven } from "../../shared/given";
import { twinFormula } from "../../shared/twin";
import { fromInternal, plainUnits, type System, type Units } from "../../shared/unit";
import { namesIn } from "../../shared/working";
import { call, catalogue, readShop } from "../../src/catalogue";
import { cells, type Typed } from "../ask";
import { near } from "../within";
import { calculated, hasLibreOffice } from "./libreoffice";

const twins = catalogue.filter((contract) => contract.twin);
const many = 12;

/** A number in plain units, well inside the argument's range; near the example, where formulas are at home. */
function plausible(arg: Arg, units: ReturnType<typeof plainUnits>): fc.Arbitrary<number> {
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
  readonly system: System;
  readonly values: Readonly<Record<string, number>>;
  readonly formula: string;
  readonly ours: unknown;
}

/** The worked example in plain units; a round chamber is its inside diameter. */
function worked(contract: Contract, wanted: readonly string[], args: ReadonlyMap<string, Arg>, units: Units): Record<string, number> {
  const { given } = readGiven(
    outlineOf(contract),
    contract.worked.typed.map((typed) => cells(typed as Typed)),
    readShop([[units.system]]),
  );
  return Object.fromEntries(
    wanted.map((name) => {
      const value = given[name] as number | { diameter: number } | undefined;
      // A setting with no value of its own, such as the barometer, takes its example: our call is given the same.
      if (value === undefined) return [name, args.get(name)!.example as number];
      return [name, fromInternal(typeof value === "number" ? value : value.diameter, units[args.get(name)!.kind!])];
    }),
  );
}

/** Random inputs on which our function has an answer, with the twin's formula for them. */
function tries(): Try[] {
  return twins.flatMap((contract) =>
    (["US", "SI"] as const).flatMap((system) => {
      const units = plainUnits(system);
      const outline = outlineOf(contract);
      const args = new Map<string, Arg>([...outline.args, ...outline.settings]);
      const wanted = [...new Set(namesIn(contract.twin!))];
      if (system === "SI" && !contract.shop) return [];
      const record = fc.record(Object.fromEntries(wanted.map((name) => [name, plausible(args.get(name)!, units)])));
      const found: Try[] = [];
      const example = system === "US" ? [worked(contract, wanted, args, units)] : [];
      for (const values of [...example, ...fc.sample(record, { numRuns: many * 12, seed: 20260314 })]) {
        if (found.length > many) break;
        const shop = [
          ["units", system],
          ...outline.settings.filter(([name]) => name in values).map(([name, setting]) => [setting.name, values[name]]),
        ];
        const typed = [...outline.args.map(([name]) => (name in values ? [[values[name]]] : undefined)), ...(contract.shop ? [shop] : [])];
        const ours = call(contract, typed as never)[0][0];
        if (typeof ours !== "number") continue;
        const text = Object.fromEntries(wanted.map((name) => [name, `(${String(values[name]).replace("e", "E")})`]));
        found.push({ name: contract.name, system, values, formula: twinFormula(contract, text, units)!, ours });
      }
      return found;
    }),
  );
}

(hasLibreOffice ? describe : describe.skip)("plain twins, computed by LibreOffice", () => {
  const all = tries();
  const theirs = hasLibreOffice ? calculated(all.map(({ formula }) => formula)) : [];

  it.each(twins.map(({ name }) => name))("%s agrees on its worked example and a dozen random inputs, US and SI", (name) => {
    const mine = all.map((one, i) => ({ ...one, theirs: theirs[i] })).filter((one) => one.name === name);
    expect(mine.length).toBeGreaterThan(many);
    for (const { ours, theirs: other, formula } of mine) {
      if (typeof other !== "number") throw new Error(`${formula} gives ${other}`);
      near(other, ours as number, 1e-9);
    }
  });
});
