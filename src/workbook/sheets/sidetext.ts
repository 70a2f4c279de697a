import { unitTable } from "../../../shared/unittable";
import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Ref } from "../place";

/** Characters that people type for the signs in a size. */
export const spellings = [
  ["×", "x"],
  ["*", "x"],
  ["by", "x"],
  ["-", " "],
  ["½", " 1/2"],
  ["¼", " 1/4"],
  ["¾", " 3/4"],
  ["″", "in"],
  ["inches", "in"],
  ["inch", "in"],
  ["feet", "ft"],
  ["foot", "ft"],
] as const;

export const replaced = (text: Formula, pairs: readonly (readonly [string, string])[]): Formula =>
  pairs.reduce<Formula>((all, [from, to]) => formula`SUBSTITUTE(${all},"${from}","${to}")`, text);

/** Lengths that a size may be typed in, those with a longer name first. */
const lengths = [...unitTable.length].sort(([a], [b]) => b.length - a.length);

/** The unit at the end of a size; where none stands there, the other. */
export const unitOf = (size: Formula, other: Formula): Formula =>
  lengths.reduceRight<Formula>((rest, [name]) => formula`IF(RIGHT(${size},${name.length})="${name}","${name}",${rest})`, other);

/** A side in the sheet's own unit: a number, whole and broken or not, and the unit behind it or else behind the other side. */
export function measured(side: Formula | Ref, unit: Ref, kit: Kit): Formula {
  const own = unitOf(formula`${side}`, formula`${unit}`);
  const number = formula`TRIM(${replaced(
    formula`${side}`,
    lengths.map(([name]) => [name, ""] as const),
  )})`;
  const broken = formula`VALUE(LEFT(${number},FIND(" ",${number})-1))+VALUE(MID(${number},FIND(" ",${number})+1,FIND("/",${number})-FIND(" ",${number})-1))/VALUE(MID(${number},FIND("/",${number})+1,9))`;
  const factor = lengths.reduceRight<Formula>(
    (rest, [name, meters]) => formula`IF(${own}="${name}",${Number((meters / kit.units.length.factor).toPrecision(15))},${rest})`,
    formula`1`,
  );
  return formula`IFERROR(IF(ISNUMBER(FIND("/",${number})),${broken},VALUE(${number}))*${factor},"")`;
}
