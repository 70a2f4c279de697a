import { badInput, type Said, said, sayIn, type Trouble } from "./outcome";
import { dimensionsOf, type Units, unitNames } from "./unit";
import type { Dimension, Kind } from "./unittable";

/** Every sentence about input stands here; each names the argument and says what to type. */

const nouns: Record<Dimension, string> = {
  length: "a length",
  area: "an area",
  volume: "a volume",
  mass: "a weight",
  temperature: "a temperature",
  difference: "a temperature difference",
  pressure: "a pressure",
  leakage: "a vacuum loss",
  heat: "a heat",
  flow: "a pump rate",
  time: "a time",
  months: "a number of months",
  share: "a percentage",
  density: "a density",
  coefficient: "a surface coefficient",
  strength: "a dye rate",
  number: "a number",
};

const sample = (kind: Kind, example: number, units: Units): string => sayIn(units, said(kind, example));

export const missing = (label: string, sayExample: string): Trouble => badInput`${label} is missing: type ${sayExample}`;

export const valueSuchAs = (kind: Kind, example: number, units: Units): string => `a value such as ${sample(kind, example, units)}`;

const byName = "; for a wood by name, PORE.GRAVITY gives it";

export const notQuantity = (label: string, shown: string, kind: Kind, dimension: Dimension, example: number, units: Units): Trouble =>
  badInput`${label}: “${shown}” is not ${nouns[dimension]}: type a value such as ${sample(kind, example, units)}${kind === "gravity" ? byName : ""}`;

export const comma = (label: string, shown: string): Trouble =>
  badInput`${label}: “${shown}” has a comma, which can be read two ways: type ${shown.replace(/,/g, ".")} with a decimal point, or leave the comma out`;

export function unknownUnit(label: string, shown: string, unit: string, dimension: Dimension): Trouble {
  const names = unitNames(dimension).join(", ");
  if (dimension === "volume" && /^oz|^ounce/i.test(unit)) return badInput`${label}: “${shown}” is a weight: for a volume type fl oz`;
  const meant = dimensionsOf(unit)[0];
  if (!names) return badInput`${label}: “${shown}” has a unit: type ${nouns[dimension]} without one`;
  if (meant) return badInput`${label}: “${shown}” is ${nouns[meant]}, not ${nouns[dimension]}: type it in ${names}`;
  return badInput`${label}: “${unit}” in “${shown}” is not a known unit: type ${names}`;
}

export function outOfRange(label: string, value: number, shown: string, kind: Kind, range: readonly [number, number]): Trouble {
  if (kind === "share" && value > range[1] && value > 1 && value / 100 <= range[1] && !shown.includes("%"))
    return badInput`${label}: ${shown} means ${value * 100} %: type ${shown} % or ${value / 100}`;
  const limits = `${label} must be from`;
  // An absurdly large number is told as typed: in another unit it may even overflow.
  if (!(Math.abs(value) < 1e18)) return badInput`${limits} ${said(kind, range[0])} to ${said(kind, range[1])}`;
  return badInput`${limits} ${said(kind, range[0])} to ${said(kind, range[1])}: ${said(kind, value)} is outside`;
}

export const notWhole = (label: string, value: Said): Trouble => badInput`${label} must be a whole number: ${value} is not`;

export const notChoice = (label: string, shown: string, choices: readonly string[]): Trouble =>
  badInput`${label}: “${shown}” is not one of ${choices.join(", ")}`;

export const notDate = (label: string, shown: string): Trouble =>
  badInput`${label}: “${shown}” is not a date: type a date such as 2026-03-14`;

export const earlyDate = (label: string): Trouble =>
  badInput`${label} is before 1 March 1900, where spreadsheets disagree about the calendar: type a later date`;

export const currency = (label: string, shown: string): Trouble =>
  badInput`${label}: “${shown}” is text: type the amount as a number, without a currency sign`;

export const heights = (a: string, rowsA: number, b: string, rowsB: number): Trouble =>
  badInput`${a} has ${rowsA} cells and ${b} has ${rowsB}: give columns of the same height, or one cell`;

export const oneCell = (label: string): Trouble => badInput`${label} takes one cell, not several`;

export const cellNumber = (index: number): string => `cell ${index + 1}: `;

export const notFinite = (): Trouble => badInput`the numbers given are too large or too small for an answer: check the units`;

export const unknownSetting = (name: string, nearest: string | undefined): Trouble =>
  nearest ? badInput`shop: there is no setting “${name}”; did you mean “${nearest}”?` : badInput`shop: there is no setting “${name}”`;

export const shopShape = (): Trouble => badInput`shop takes two columns, the name of a setting and its value, or just "US" or "SI"`;
