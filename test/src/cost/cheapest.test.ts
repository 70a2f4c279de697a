import * as fc from "fast-check";
import { branched } from "../../../src/cost/branched";
import { cheapest } from "../../../src/cost/cheapest";
import type { Offer } from "../../../src/cost/offer";
import { tabled } from "../../../src/cost/tabled";

type Sums = readonly [price: bigint, volume: bigint];

const sums = (counts: readonly number[], offers: readonly Offer[]): Sums => [
  counts.reduce((sum, n, i) => sum + BigInt(n) * offers[i].price, 0n),
  counts.reduce((sum, n, i) => sum + BigInt(n) * offers[i].size, 0n),
];

/** Every purchase that covers the need and has no piece too many: slow, and hard to get wrong. */
function bruteForce(need: bigint, offers: readonly Offer[], price = 0n, volume = 0n): Sums | undefined {
  if (volume >= need) return [price, volume];
  if (!offers.length) return undefined;
  const [first, ...others] = offers;
  let best: Sums | undefined;
  for (let n = 0n; ; n++) {
    const own = bruteForce(need, others, price + n * first.price, volume + n * first.size);
    if (own && (!best || own[0] < best[0] || (own[0] === best[0] && own[1] < best[1]))) best = own;
    if (volume + n * first.size >= need) return best;
  }
}

const offer = fc.record({ size: fc.bigInt({ min: 1n, max: 40n }), price: fc.bigInt({ min: 1n, max: 60n }) });
const market = fc.array(offer, { minLength: 1, maxLength: 4 });
const wanted = fc.bigInt({ min: 1n, max: 90n });

describe("the search for the cheapest purchase", () => {
  it("finds what trying everything finds, price and volume", () =>
    fc.assert(
      fc.property(wanted, market, (need, offers) => {
        const best = bruteForce(need, offers);
        expect(sums(cheapest(need, offers)!, offers)).toEqual(best);
        expect(sums(branched(need, offers, 1e6)!, offers)).toEqual(best);
        expect(sums(tabled(Number(need), offers), offers)).toEqual(best);
      }),
      { numRuns: 400 },
    ));

  it("is of one mind by table and by tree where trying everything is too slow", () =>
    fc.assert(
      fc.property(
        fc.bigInt({ min: 500n, max: 5000n }),
        fc.array(fc.record({ size: fc.bigInt({ min: 20n, max: 900n }), price: fc.bigInt({ min: 20n, max: 900n }) }), {
          minLength: 2,
          maxLength: 6,
        }),
        (need, offers) => {
          const tree = branched(need, offers, 100_000);
          if (tree) expect(sums(tree, offers)).toEqual(sums(tabled(Number(need), offers), offers));
        },
      ),
    ));

  it("says so where it would not end", () => {
    const prime = [1000003n, 1500007n, 2000003n, 2500009n, 3000017n, 3500017n];
    const alike = prime.map((size) => ({ size, price: size }));
    expect(cheapest(10n ** 10n - 1n, alike)).toBeUndefined();
  });
});
