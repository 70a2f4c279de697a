import type { Arg } from "./argument";
import { fractionText } from "./fraction";
import { said, sayIn, tidy } from "./outcome";
import { fromInternal, type Units } from "./unit";

/** Places behind the point that a number format shows. */
export const placesOf = (format: string): number => /0\.(0+)/.exec(format)?.[1].length ?? 0;

/** So many places as the format has, and more where a small number would lose its second figure. */
export function placesFor(values: readonly number[], format: string): number {
  const sizes = values.filter((value) => value !== 0).map((value) => 1 - Math.floor(Math.log10(Math.abs(value))));
  return Math.min(8, Math.max(placesOf(format), 0, ...sizes));
}

/** The marks of a bench rule. */
const marks = 16;

/** Inches as a rule shows them: 7 3/8. Below its finest mark they stay decimal. */
function onRule(inches: number): string | undefined {
  const marked = Math.round(inches * marks) / marks;
  return marked === 0 && inches !== 0 ? undefined : fractionText(marked, marks);
}

function figures(value: number, format: string, unit: string): string {
  if (unit === "in") return onRule(value) ?? tidy(value);
  if (unit === "mm" && Math.abs(value) >= 1) return value.toFixed(0);
  const places = placesOf(format) === 0 && Math.abs(value) >= 1 ? 0 : placesFor([value], format);
  return String(Number(value.toFixed(places)) + 0);
}

/** A worked-out number as a person can measure it, with its unit: the places of its format, two figures at the least, sixteenths of an inch. */
export function sayMeasured({ kind }: Arg, format: string, value: number, units: Units): string {
  if (kind === "date" || format === "General") return kind ? sayIn(units, said(kind, value)) : tidy(value);
  if (kind === "share") return `${figures(value * 100, format, "")} %`;
  const unit = kind ? units[kind] : undefined;
  const plain = unit ? fromInternal(value, unit) : value;
  const name = unit?.name ?? "";
  const shown = kind === "money" ? plain.toFixed(2) : figures(plain, format, name);
  return name ? `${shown} ${name}` : shown;
}
