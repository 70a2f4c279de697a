import type { Arg } from "../shared/argument";
import { capital } from "../shared/capital";
import type { Contract } from "../shared/contract";
import { sayMeasured } from "../shared/measured";
import { isFault, type Outcome, tidy } from "../shared/outcome";
import type { Result } from "../shared/result";
import { isoDate } from "../shared/serial";
import { fromInternal, plainUnits, toInternal, type Units } from "../shared/unit";
import { call, catalogue } from "../src/catalogue";

/** Answers in a person's words and kitchen measures. */

const us = plainUnits("US");

/** A screen that can only say no shows its verdict, never the number behind it. */
const screens = new Set(["LIDLOAD"]);
export const isScreen = ({ name }: Contract): boolean => screens.has(name);

const cup = 0.2365882365 / 1000;

function spoons(volume: number): string | undefined {
  const contract = catalogue.find(({ name }) => name === "SPOONS");
  if (!contract) return undefined;
  const answer = call(contract, [[[fromInternal(volume, us.powder)]]])[0][0];
  return typeof answer === "string" && answer ? answer : undefined;
}

/** The same quantity as a kitchen measures it: fluid in cups and mL, dye in spoons. */
function alsoOf(kind: Arg["kind"], value: number, units: Units): string[] {
  const millilitres = `${Number((value * 1e6).toPrecision(3))} mL`;
  const cups = Number((value / cup).toPrecision(2));
  if (kind === "fluid") return [`${cups} ${cups === 1 ? "cup" : "cups"}`, millilitres];
  if (kind !== "powder") return [];
  const own = units.powder.name === "mL" ? `${tidy(fromInternal(value, us.powder))} tsp` : millilitres;
  return [spoons(value), own].filter((words) => words !== undefined);
}

const clock = (serial: number) => {
  const minutes = Math.round((serial - Math.floor(serial)) * 1440);
  return `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
};

function sayDate(serial: number): string {
  if (serial < 61) return `day ${Math.floor(serial) + 1}, ${clock(serial)}`;
  return serial % 1 ? `${isoDate(serial)} ${clock(serial)}` : isoDate(serial);
}

/** One cell of an answer, with its unit. */
function sayCell(of: Arg | undefined, outcome: Outcome, units: Units, format = "General"): string {
  if (isFault(outcome)) return outcome.message || outcome.error;
  if (typeof outcome === "boolean") return outcome ? "yes" : "no";
  if (typeof outcome === "string") return outcome;
  if (!of?.kind) return tidy(outcome);
  if (of.kind === "date") return sayDate(outcome);
  return sayMeasured(of, format, toInternal(outcome, units[of.kind]), units);
}

export interface Line {
  readonly label: string;
  readonly value: string;
  readonly also: readonly string[];
  readonly fault: boolean;
}

function lineOf(of: Arg, outcome: Outcome, units: Units, format: string): Line {
  const internal = typeof outcome === "number" && of.kind ? toInternal(outcome, units[of.kind]) : undefined;
  return {
    label: capital(of.label),
    value: sayCell(of, outcome, units, format),
    also: internal === undefined ? [] : alsoOf(of.kind, internal, units),
    fault: isFault(outcome),
  };
}

/** The verdict of a screen, and nothing more. */
const verdict = (of: Arg, outcome: Outcome): Line => ({
  label: capital(of.label),
  value: isFault(outcome) ? "too weak: do not pump" : String(outcome),
  also: [],
  fault: isFault(outcome),
});

/** The cells of a row, or the one cell, each as a line. */
export function linesOf(contract: Contract, cells: readonly Outcome[], units: Units): Line[] {
  const returns: Result = contract.returns;
  const formats = formatsOf(contract);
  if (returns.form === "cell" || returns.form === "spread")
    return [(isScreen(contract) ? verdict : lineOf)(returns.of, cells[0], units, formats[0])];
  return Object.values(returns.of).map((of, i) => lineOf(of, cells[i], units, formats[i]));
}

/** A table in words: its headings, then its rows. */
export function tableOf(contract: Contract, answer: readonly (readonly Outcome[])[], units: Units): { head: string[]; rows: string[][] } {
  const returns: Result = contract.returns;
  const formats = formatsOf(contract);
  if (returns.form === "cell" || returns.form === "spread")
    return {
      head: [capital(returns.of.label)],
      rows: answer.map((row) => row.map((cell) => sayCell(returns.of, cell, units, formats[0]))),
    };
  const entries = Object.values(returns.of);
  const body = returns.form === "table" && returns.header ? answer.slice(1) : answer;
  return {
    head: entries.map(({ label }) => capital(label)),
    rows: body.map((row) => row.map((cell, i) => sayCell(entries[i], cell, units, formats[i]))),
  };
}

/** Number formats by column, as they go into the sheet with the formula. */
export function formatsOf(contract: Contract): string[] {
  const { format, returns } = contract;
  if (typeof format === "string") return [format];
  return Object.keys((returns as Extract<Result, { form: "row" | "table" }>).of).map((name) => format[name] ?? "General");
}
