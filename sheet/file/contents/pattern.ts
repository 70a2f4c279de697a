/**
 * Formulas that are filled down differ in their cells alone. What is worked out for one of them, cells left open, holds for all:
 * here a formula becomes its pattern, in which cells far beyond any sheet stand for its own.
 */

const cell = /(?<![\w.$\\])\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}(?![\w.(![])/g;
const first = 9_000_000;
const placeholder = /ZZZ(9\d{6})(?!\d)/g;

interface Pattern {
  readonly text: string;
  readonly cells: readonly string[];
}

function patternOf(formula: string): Pattern {
  const cells: string[] = [];
  return { text: formula.replace(cell, (own) => `ZZZ${first + cells.push(own) - 1}`), cells };
}

const filled = (text: string, cells: readonly string[]): string =>
  text.replace(placeholder, (own, number) => cells[Number(number) - first] ?? own);

/** Whether what a formula becomes depends on the very cell that it stands in: a table's `[@price]` does. */
const dependsOnPlace = (formula: string) => formula.includes("[") || formula.includes("ZZZ");

function remembered<T>(work: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined || known.has(text)) return found as T;
    const made = work(text);
    known.set(text, made);
    return made;
  };
}

/** Work that turns a formula into another, done once for each pattern. */
export function turnedOnce(work: (formula: string) => string): (formula: string) => string {
  const known = remembered(work);
  return (formula) => {
    if (dependsOnPlace(formula)) return work(formula);
    const { text, cells } = patternOf(formula);
    return filled(known(text), cells);
  };
}

/** Work that asks something of a formula which its cells do not change, done once for each pattern. */
export function askedOnce<T>(work: (formula: string) => T): (formula: string) => T {
  const known = remembered(work);
  return (formula) => known(patternOf(formula).text);
}
