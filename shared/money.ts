import Decimal from "decimal.js";
import { badInput } from "./outcome";

/** Digits of decimals: enough that a product of two typed numbers is exact and no quotient is rounded into a half cent. */
const Exact = Decimal.clone({ precision: 60 });

/** A number as the decimal it was typed as: 0.1 is a tenth, not the binary fraction beside it. */
export const decimal = (n: number): Decimal => new Exact(String(n));

/** Rounded to the cent, a half away from zero. */
export const inCents = (amount: Decimal): Decimal => amount.toDecimalPlaces(2, Decimal.ROUND_HALF_UP);

/** Above this, neighboring doubles are more than a cent apart. */
const most = 2 ** 46;

/** An amount as a number, exact to the cent or refused. */
export function amount(exact: Decimal): number {
  if (exact.abs().gt(most)) throw badInput`the amounts are too large to work out to the cent: check them`;
  return exact.toNumber();
}

/** Decimals as whole multiples of one power of ten, which keeps every digit of every one. */
export function wholes(decimals: readonly Decimal[]): bigint[] {
  const places = decimals.reduce((all, d) => Math.max(all, d.decimalPlaces()), 0);
  return decimals.map((d) => BigInt(d.times(`1e${places}`).toFixed(0)));
}
