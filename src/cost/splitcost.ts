import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { amount, decimal, inCents, wholes } from "../../shared/money";
import { badInput } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { spread } from "../../shared/result";
import { column } from "../../shared/whole";

/** Shares of a whole number in proportion to weights, whole numbers too: the largest remainders round up, the first of equal ones. */
export function apportion(whole: bigint, weights: readonly bigint[]): bigint[] {
  const sum = weights.reduce((a, b) => a + b, 0n);
  const shares = weights.map((weight) => (whole * weight) / sum);
  const rest = weights.map((weight, i) => ({ i, remainder: (whole * weight) % sum }));
  const missing = Number(whole - shares.reduce((a, b) => a + b, 0n));
  rest.sort((a, b) => (a.remainder === b.remainder ? a.i - b.i : a.remainder > b.remainder ? -1 : 1));
  for (const { i } of rest.slice(0, missing)) shares[i]++;
  return shares;
}

function split(total: number, weights: readonly number[]): number[] {
  if (!weights.some((weight) => weight > 0)) throw badInput`weights are all zero: type at least one above zero`;
  const rounded = inCents(decimal(total));
  const cents = BigInt(rounded.abs().times(100).toFixed(0));
  const sign = rounded.isNegative() ? -1 : 1;
  return apportion(cents, wholes(weights.map(decimal))).map((share) => amount(decimal(sign).times(share.toString()).div(100)));
}

/** Amounts in proportion to weights that add up to the total, to the cent. */
export const splitcost = define({
  name: "SPLITCOST",
  per: "call",
  asks: "How do we split the cost?",
  args: {
    total: quantity("money", "amount to split", 100, [-1e12, 1e12]),
    weights: column(quantity("number", "weight of a share", 1)),
  },
  returns: spread(quantity("money", "share", 33.33), "weights"),
  format: "0.00",
  equation: "{total} × weight / sum of {weights}, down to the cent; the cents left go to the largest remainders, the first of equal ones",
  source: "largest remainders, Hamilton's method of 1792",
  accuracy: "the shares add up to the total to the cent, and none is a cent away from its exact part",
  cautions: [],
  worked: { typed: [100, [1, 1, 1]], gives: [[33.34], [33.33], [33.33]] },
  run: ({ total, weights }) => {
    const filled = weights.flatMap((weight, i) => (weight === undefined ? [] : [{ weight, i }]));
    const shares = new Array<Quantity<"money"> | undefined>(weights.length).fill(undefined);
    split(
      total,
      filled.map(({ weight }) => weight),
    ).forEach((share, i) => {
      shares[filled[i].i] = as(share);
    });
    return shares;
  },
});
