import type { Arg } from "./argument";
import { type Said, said } from "./outcome";
import { fromInternal } from "./unit";
import type { Kind } from "./unittable";

/** A number of a result whose kind differs from row to row, or words in its place. */
export const measure = (label: string, example: number): Arg<Said | string> => ({
  label,
  example,
  sample: () => `a number such as ${example}`,
  read: (cell) => said("number", Number(cell)),
  show: (made: Said | string, units) => (typeof made === "string" ? made : fromInternal(made.value, units[made.kind])),
});

/** The unit of such a number, for the cell beside it. */
export const unitName = (label: string, example: string): Arg<Kind> => ({
  label,
  example,
  sample: () => `a unit such as ${example}`,
  read: () => "number",
  show: (kind: Kind, units) => units[kind].name,
});
