import type { Arg } from "./argument";
import { fractionText } from "./fraction";
import { said, sayIn, tidy } from "./outcome";
import { fromInternal, type Units } from "./unit";

/** Decimal places of a number format. */
const placesOf = (format: string): number => /0\.(0+)/.exec(format)?.[1].length ?? 0;

/**
 * So many places as the format has, and more where a small number, or one of those said with it, would lose its second figure. What
 * is shown whole stays whole from 1 on.
 */
export function placesFor(value: number, format: string, others: readonly number[] = []): number {
  const own = placesOf(format);
  if (own === 0 && Math.abs(value) >= 1) return 0;
  const sizes = [value, ...(own === 0 ? others : [])].filter((one) => one !== 0).map((one) => 1 - Math.floor(Math.log10(Math.abs(one))));
  return Math.min(8, Math.max(own, ...sizes));
}

export const toPlaces = (value: number, places: number): string => String(Number(value.toFixed(places)));

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
  return toPlaces(value, placesFor(value, format));
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
