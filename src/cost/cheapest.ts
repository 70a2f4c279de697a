import { branched } from "./branched";
import type { Offer } from "./offer";
import { tabled } from "./tabled";

const divisor = (a: bigint, b: bigint): bigint => (b === 0n ? a : divisor(b, a % b));
const common = (numbers: readonly bigint[]): bigint => numbers.reduce(divisor);

/** Another size holds more for less, or the same for the same and stands first. */
const isBeaten = (mine: Offer, i: number, offers: readonly Offer[]): boolean =>
  offers.some(
    (other, j) =>
      (other.size >= mine.size && other.price < mine.price) || (j < i && other.size === mine.size && other.price === mine.price),
  );

/** Steps of the search tree that cost less than a table; and the most steps ever taken, about a tenth of a second. */
const quick = 15_000;
const patience = 200_000;

/** Cells that a table may have, summed over the sizes: some hundredths of a second. */
const roomiest = 6e6;

/** The table counts in plain numbers, which must stay whole and safe. */
const fitsTable = (need: bigint, offers: readonly Offer[]): boolean =>
  need * BigInt(offers.length) <= roomiest && offers.every(({ size, price }) => need * (size + price) <= Number.MAX_SAFE_INTEGER);

/** What a search tree leaves in doubt is looked up in a table of every volume up to the need, if the sizes' measure allows one. */
const searched = (need: bigint, offers: readonly Offer[]): readonly number[] | undefined =>
  branched(need, offers, quick) ?? (fitsTable(need, offers) ? tabled(Number(need), offers) : branched(need, offers, patience));

/**
 * How many of each to buy so that a need is covered at the least price, and then with the least left over; undefined where
 * the search would not end.
 */
export function cheapest(need: bigint, offers: readonly Offer[]): number[] | undefined {
  if (need <= 0n) return offers.map(() => 0);
  const kept = offers.map((offer, i) => ({ ...offer, i })).filter((offer) => !isBeaten(offer, offer.i, offers));
  const measure = common(kept.map(({ size }) => size));
  const coin = common(kept.map(({ price }) => price));
  const found = searched(
    (need + measure - 1n) / measure,
    kept.map(({ size, price }) => ({ size: size / measure, price: price / coin })),
  );
  if (!found) return undefined;
  const counts = offers.map(() => 0);
  kept.forEach(({ i }, k) => {
    counts[i] = found[k];
  });
  return counts;
}
