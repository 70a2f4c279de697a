import type { Arg } from "./argument";
import { type Contract, parameters } from "./contract";
import { tidy } from "./outcome";
import type { Result } from "./result";
import type { Setting } from "./settings";
import { fromInternal, plainUnits } from "./unit";
import type { Kind } from "./unittable";

const us = plainUnits("US");
const si = plainUnits("SI");

/** The unit of a plain number, US and SI. */
export function unitWords(kind: Kind): string {
  const [own, metric] = [us[kind].name, si[kind].name];
  if (kind === "weight") return `${own}, ${metric} under SI, or as the scale reads`;
  return own === metric ? own : `${own}, ${metric} under SI`;
}

/** The range of a value in US units; "" where it has none. */
export function rangeWords({ kind, range }: Arg): string {
  if (!kind || kind === "date" || !range) return "";
  const [least, most] = range.map((end) => tidy(fromInternal(end, us[kind])));
  const { name } = us[kind];
  const unit = name && name !== si[kind].name ? ` ${name}` : "";
  return Number(most) < 1e12 ? `${least} to ${most}${unit}` : `${least}${unit} or more`;
}

function leftOut(arg: Arg | Setting): string {
  if ("basis" in arg) return `if left out: the shop's ${arg.name}`;
  return arg.optional && arg.otherwise !== undefined && arg.kind ? `left out: ${tidy(fromInternal(arg.otherwise, us[arg.kind]))}` : "";
}

/** An argument in one line, as a spreadsheet shows it while a formula is typed. */
export function argumentWords(arg: Arg): string {
  const sample = arg.choices || typeof arg.example === "object" ? arg.sample(us) : `such as ${arg.example}`;
  const words = [arg.kind ? unitWords(arg.kind) : "", rangeWords(arg), sample, leftOut(arg)];
  return `${arg.label} (${words.filter(Boolean).join("; ")})`;
}

/** What an answer holds, in words. */
export const resultWords = (returns: Result): string =>
  returns.form === "cell" || returns.form === "spread"
    ? returns.of.label
    : Object.values(returns.of)
        .map((arg) => arg.label)
        .join(", ");

/** A date is a number to a spreadsheet: it shows as one until its cell has a date format. */
const isDated = (returns: Result): boolean =>
  (returns.form === "cell" || returns.form === "spread" ? [returns.of] : Object.values(returns.of)).some(({ kind }) => kind === "date");

/** A function in one line: its question and what it gives. */
export const functionWords = (contract: Contract): string =>
  `${contract.asks} Gives: ${resultWords(contract.returns)}.${isDated(contract.returns) ? " Give a cell with a date a date format." : ""}`;

/** A text inside a comment may not end it, nor open a line or a tag of its own. */
const inComment = (text: string) => text.replace(/\s+/g, " ").replace(/\*\//g, "* /").replace(/@/g, "at ").trim();

function declaration(contract: Contract, help: string): string {
  const all = parameters(contract);
  const tags = [
    inComment(functionWords(contract)),
    `@customfunction ${contract.name}`,
    ...all.map(([name, arg]) => `@param ${name} ${inComment(argumentWords(arg))}`),
    `@helpurl ${help}`,
    "@requiresAddress",
  ];
  const list = all.map(([name, arg]) => `${name}${arg.optional ? "?" : ""}: any[][]`);
  const signature = [...list, "invocation: CustomFunctions.Invocation"].join(", ");
  return `/**\n${tags.map((tag) => ` * ${tag}\n`).join("")} */\nfunction ${contract.name}(${signature}): any[][] {}\n`;
}

/**
 * Declarations of the contracts, for tools that read a function's shape from TypeScript. Every argument is a
 * block of cells, and an optional one is marked so rather than given a type of its own: a union loses the block.
 */
export const stub = (contracts: readonly Contract[], help: (contract: Contract) => string): string =>
  contracts.map((contract) => declaration(contract, help(contract))).join("\n");
