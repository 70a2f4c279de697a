import type { Offer } from "./offer";

interface Way {
  readonly counts: readonly bigint[];
  readonly price: bigint;
  /** How much more than the need it holds. */
  readonly over: bigint;
}

/**
 * Counts by branch and bound, the best value first: a branch is left when what is still open must cost as much as the next
 * best value makes it, and with that the best way known is not beaten. Undefined where the steps allowed run out.
 */
export function branched(need: bigint, offers: readonly Offer[], patience: number): number[] | undefined {
  const order = offers.map((_, i) => i).sort((a, b) => Number(offers[a].price * offers[b].size - offers[b].price * offers[a].size));
  const ranked = order.map((i) => offers[i]);
  const counts = ranked.map(() => 0n);
  let best: Way | undefined;
  let steps = 0;

  const isBetter = (price: bigint, over: bigint) => !best || price < best.price || (price === best.price && over < best.over);

  /** Covers the rest of the need from one size on; false where the steps ran out. */
  const fill = (rank: number, open: bigint, price: bigint): boolean => {
    const { size, price: each } = ranked[rank];
    const next = ranked[rank + 1];
    const most = (open + size - 1n) / size;
    for (let count = most; count >= 0n; count--) {
      if (++steps > patience) return false;
      counts[rank] = count;
      const paid = price + count * each;
      const rest = open - count * size;
      if (rest <= 0n) {
        if (isBetter(paid, -rest)) best = { counts: [...counts], price: paid, over: -rest };
      } else {
        // Fewer of this size cost as much or more for every volume, so the first branch to fail ends the row.
        if (!next || !isBetter(paid + (rest * next.price + next.size - 1n) / next.size, 0n)) break;
        if (!fill(rank + 1, rest, paid)) return false;
      }
    }
    counts[rank] = 0n;
    return true;
  };

  if (!fill(0, need, 0n) || !best) return undefined;
  const found: Way = best;
  const made = offers.map(() => 0);
  order.forEach((i, rank) => {
    made[i] = Number(found.counts[rank]);
  });
  return made;
}
