import type { Arg } from "./argument";
import { type Said, said } from "./outcome";
import { fromInternal, type Units } from "./unit";
import type { Kind } from "./unittable";

/** A number of a result whose kind differs from row to row, or words in its place. */
export const measure = (label: string, example: number): Arg<Said | string> => ({
  label,
  example,
  sample: () => `a number such as ${example}`,
  read: (cell) => said("number", Number(cell)),
  show: (made: Said | string, units) => (typeof made === "string" ? made : fromInternal(made.value, units[made.kind])),
});

/** Words that name quantities in the units of whoever asks. */
export type Words = (units: Units) => string;

/** The unit of such a number for the cell beside it, or another remark. */
export const unitName = (label: string, example: string): Arg<Kind | Words> => ({
  label,
  example,
  sample: () => `a unit such as ${example}`,
  read: () => "number",
  show: (made: Kind | Words, units) => (typeof made === "function" ? made(units) : units[made].name),
});
