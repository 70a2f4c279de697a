import type { Arg } from "../../shared/argument";
import type { Contract } from "../../shared/contract";
import { outlineOf, readGiven } from "../../shared/given";
import { shopReader } from "../../shared/settings";
import { plainUnits, toInternal } from "../../shared/unit";
import { settings } from "../../src/shop";

type Block = readonly (readonly unknown[])[];

const us = plainUnits("US");
const shop = shopReader(settings)(undefined);

/** A little up and down about a value, in step with nothing, and the same in every run. */
const about = (value: number, row: number, argument: number) => value * (1 + 0.02 * Math.sin(row * 12.9898 + argument * 78.233));

/** Columns of plain US values about a contract's worked example; only what the example gives. */
export function columnsOf(contract: Contract, rows: number): Block[] {
  return outlineOf(contract).args.flatMap(([, arg], a) => {
    const typed = contract.worked.typed[a];
    if (typed === undefined) return [];
    const cells = Array.from({ length: rows }, (_, row) => {
      if (arg.kind === "date") return [46053 + (row % 365)];
      if (arg.kind === "count" || arg.kind === "months") return [typed];
      return [typeof typed === "number" ? about(typed, row, a) : typed];
    });
    // As a host hands them over: read from JSON.
    return [JSON.parse(JSON.stringify(cells))];
  });
}

const isNumber = (arg: Arg) => arg.kind !== undefined && arg.range !== undefined;

/** The same columns as a hand-written function would like them best: numbers in internal units, words as they are. */
export const insideOf = (contract: Contract, columns: readonly Block[]): Block[] =>
  columns.map((column, a) => {
    const [, arg] = outlineOf(contract).args[a];
    return isNumber(arg) ? column.map(([cell]) => [toInternal(cell as number, us[arg.kind!])]) : column;
  });

/** The bare formula over blocks that a person would write for MOISTURE alone, in ounces. */
export function bareMoisture(weight: Block, dryWeight: Block): unknown[][] {
  const answers: unknown[][] = new Array(weight.length);
  for (let row = 0; row < weight.length; row++) {
    const w = weight[row][0];
    const d = dryWeight[row][0];
    if (typeof w !== "number" || typeof d !== "number" || !(w >= d && d > 0 && w <= 1e6)) answers[row] = ["#VALUE!"];
    else answers[row] = [(w - d) / d];
  }
  return answers;
}

/**
 * The loop that a person would write around one formula: type and range tested, a word looked up, `[value]` written. It is
 * compiled for its contract, so that it knows names and ranges as a hand-written one does.
 */
export function borderLoop(contract: Contract, columns: readonly Block[]): () => unknown[][] {
  const outline = outlineOf(contract);
  const { given } = readGiven(
    outline,
    columns.map((column) => [column[0]] as never),
    shop,
  );
  const words = columns.map((column, a) => {
    const [, arg] = outline.args[a];
    return new Map(isNumber(arg) ? [] : column.map(([cell]) => [cell, arg.read(cell as string, us)]));
  });
  const tests = columns.map((_, a) => {
    const [, arg] = outline.args[a];
    const wrong = isNumber(arg)
      ? `typeof v${a} !== "number" || !(v${a} >= ${arg.range![0]} && v${a} <= ${arg.range![1]})`
      : `v${a} === undefined`;
    const value = isNumber(arg) ? `columns[${a}][row][0]` : `words[${a}].get(columns[${a}][row][0])`;
    return `const v${a} = ${value}; if (${wrong}) { answers[row] = ["#VALUE!"]; continue; }`;
  });
  const fields = Object.keys(given).map((name) => {
    const a = outline.args.findIndex(([own]) => own === name);
    return `${name}: ${a >= 0 && a < columns.length ? `v${a}` : `given.${name}`}`;
  });
  const answer = contract.returns.form === "row" ? "Object.values(made)" : "[made]";
  const body = `return () => {
    const answers = new Array(columns[0].length);
    for (let row = 0; row < columns[0].length; row++) {
      ${tests.join("\n")}
      const made = run({ ${fields.join(", ")} });
      answers[row] = ${answer};
    }
    return answers;
  };`;
  const inside = insideOf(contract, columns);
  return new Function("columns", "words", "given", "run", body)(inside, words, given, contract.run) as () => unknown[][];
}
