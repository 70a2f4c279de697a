/** One size on sale: volume and price, each a whole multiple of some measure of its own. */
export interface Offer {
  readonly size: bigint;
  readonly price: bigint;
}
