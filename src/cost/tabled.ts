import type { Offer } from "./offer";

/**
 * Counts by dynamic programming: the best way to cover a volume is one more of some size on top of the best way to cover what
 * is then left. Exact where need and sizes are whole numbers and the sums of prices stay safe integers.
 */
export function tabled(need: number, offers: readonly Offer[]): number[] {
  const sizes = offers.map(({ size }) => Number(size));
  const prices = offers.map(({ price }) => Number(price));
  const paid = new Float64Array(need + 1);
  const volume = new Float64Array(need + 1);
  const last = new Uint8Array(need + 1);
  for (let open = 1; open <= need; open++) {
    let least = Number.POSITIVE_INFINITY;
    let held = 0;
    for (let k = 0; k < sizes.length; k++) {
      const rest = Math.max(0, open - sizes[k]);
      const price = paid[rest] + prices[k];
      const filled = volume[rest] + sizes[k];
      if (price > least || (price === least && filled >= held)) continue;
      least = price;
      held = filled;
      last[open] = k;
    }
    paid[open] = least;
    volume[open] = held;
  }
  const counts = sizes.map(() => 0);
  for (let open = need; open > 0; open -= sizes[last[open]]) counts[last[open]]++;
  return counts;
}
